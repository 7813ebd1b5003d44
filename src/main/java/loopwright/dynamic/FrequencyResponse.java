package loopwright.dynamic;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Sensitivity over frequency, as a ratio to that at the lowest frequency.
 *
 * @param points by rising frequency, two at least
 */
public record FrequencyResponse(List<Point> points) {

  public FrequencyResponse {
    points = List.copyOf(points);
    if (points.size() < 2) {
      throw new IllegalArgumentException("A response takes two frequencies at least.");
    }
  }

  /**
   * One frequency.
   *
   * @param ratio of its sensitivity to that at the lowest frequency
   * @param phaseDegrees as measured; empty where it wasn't
   */
  public record Point(DynamicReading reading, double ratio, OptionalDouble phaseDegrees) {
    public double hertz() {
      return reading.hertz();
    }

    public double decibels() {
      return Decibels.of(ratio);
    }
  }

  /** A reading and its phase, as measured. */
  public record Measured(DynamicReading reading, OptionalDouble phaseDegrees) {}

  /** The lowest frequency is the reference, in whatever order they come. */
  public static FrequencyResponse of(List<Measured> measured) {
    List<Measured> rising = new ArrayList<>(measured);
    rising.sort(Comparator.comparingDouble(one -> one.reading().hertz()));
    if (rising.isEmpty()) {
      throw new IllegalArgumentException("A response takes two frequencies at least.");
    }
    double reference = rising.get(0).reading().sensitivity();
    return new FrequencyResponse(
        rising.stream()
            .map(
                one ->
                    new Point(
                        one.reading(), one.reading().sensitivity() / reference, one.phaseDegrees()))
            .toList());
  }

  /** The point that lies farthest outside a band, or nearest to its edge from within. */
  public Point worst(double lowDecibels, double highDecibels) {
    return points.stream()
        .max(
            Comparator.comparingDouble(
                point -> Math.max(lowDecibels - point.decibels(), point.decibels() - highDecibels)))
        .orElseThrow();
  }

  /**
   * Phase at a point from that at the lowest frequency, degrees, above −180 and up to 180; empty
   * where either wasn't measured.
   */
  public OptionalDouble phaseShift(Point point) {
    OptionalDouble reference = points.get(0).phaseDegrees();
    if (reference.isEmpty() || point.phaseDegrees().isEmpty()) {
      return OptionalDouble.empty();
    }
    double shift = point.phaseDegrees().getAsDouble() - reference.getAsDouble();
    return OptionalDouble.of(shift - 360 * Math.ceil((shift - 180) / 360));
  }
}
