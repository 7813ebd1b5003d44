package loopwright.print;

import java.util.List;

/**
 * What the three plots of a curve show, in canonical units: gaps and deviations in µm, outputs in
 * V, ISF in mV/µm. Every number is finite.
 *
 * @param id distinguishes this drawing from others on the page: letters, digits, hyphens
 * @param label the drawing in a sentence, for those who don't see it
 * @param traces one for each run
 * @param line the straight line that deviations are counted from
 * @param isfBand limits of the incremental scale factor
 * @param deviationBand limits of the deviation
 * @param words said beside the plots
 */
public record CurvePicture(
    String id,
    String label,
    List<Trace> traces,
    Line line,
    Band isfBand,
    Band deviationBand,
    Words words) {

  public CurvePicture {
    traces = List.copyOf(traces);
    if (!id.matches("[A-Za-z][A-Za-z0-9-]*")) {
      throw new IllegalArgumentException("An id is letters, digits and hyphens: " + id);
    }
    if (traces.isEmpty() || traces.stream().anyMatch(trace -> trace.dots().isEmpty())) {
      throw new IllegalArgumentException("A curve has readings.");
    }
  }

  /** How a mark stands to its limits. */
  public enum Standing {
    WITHIN,
    OUTSIDE,
    NOT_JUDGED
  }

  /** How a run's marks look. */
  public enum Look {
    /** Circles and a full line. */
    FIRST,
    /** Diamonds and a broken line. */
    SECOND
  }

  /**
   * One run.
   *
   * @param name in the key
   * @param dots by rising gap
   * @param steps its increments
   */
  public record Trace(String name, Look look, List<Dot> dots, List<Step> steps) {
    public Trace {
      dots = List.copyOf(dots);
      steps = List.copyOf(steps);
    }
  }

  /**
   * One reading.
   *
   * @param standing of its deviation
   */
  public record Dot(
      double gapMicrometres, double volts, double deviationMicrometres, Standing standing) {
    public Dot {
      refuseUnfit(gapMicrometres, volts, deviationMicrometres);
    }
  }

  /**
   * One increment.
   *
   * @param isf mV/µm
   */
  public record Step(double fromMicrometres, double toMicrometres, double isf, Standing standing) {
    public Step {
      refuseUnfit(fromMicrometres, toMicrometres, isf);
    }
  }

  /** A line from one point to another. */
  public record Line(
      double fromMicrometres, double fromVolts, double toMicrometres, double toVolts) {
    public Line {
      refuseUnfit(fromMicrometres, fromVolts, toMicrometres, toVolts);
    }
  }

  /** Limits and the value between them. */
  public record Band(double low, double middle, double high) {
    public Band {
      refuseUnfit(low, middle, high);
      if (!(low < middle && middle < high)) {
        throw new IllegalArgumentException("A band has a width.");
      }
    }
  }

  /**
   * Said beside the plots, short.
   *
   * @param line what the line is
   * @param isf what the ISF band is
   * @param deviation what the deviation band is
   * @param gap said after the gap axis, for instance which zero was used; may be empty
   */
  public record Words(String line, String isf, String deviation, String gap) {}

  private static void refuseUnfit(double... numbers) {
    for (double number : numbers) {
      if (!Double.isFinite(number)) {
        throw new IllegalArgumentException("A drawing needs finite numbers.");
      }
    }
  }
}
