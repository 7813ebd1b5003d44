package loopwright.cause;

import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * What another total length would make of a loop: its baseline under the length law, with exponent
 * and change along the gap as uncertain as the law is.
 */
public final class LengthOutlook {
  private static final double COVERAGE = 2;

  private final Baseline baseline;
  private final LengthLaw law;
  private final double lnRatio;
  private final List<Likelihood.Node> nodes;

  /**
   * @param systemMetres that the driver is tuned for
   * @param fittedMetres total, within {@link LengthLaw#REACH} of it
   */
  public LengthOutlook(Baseline baseline, LengthLaw law, double systemMetres, double fittedMetres) {
    this.baseline = baseline;
    this.law = law.doubted(baseline.doubtOfLaw()).overTravel(baseline.travelMicrometres() / 1000);
    this.lnRatio = Math.log(systemMetres / fittedMetres);
    this.nodes = Lengths.nodes(this.law, lnRatio);
  }

  /** Whether the law was thought out for a length so far off. */
  public static boolean isWithinReach(double systemMetres, double fittedMetres) {
    return Math.abs(fittedMetres - systemMetres) <= LengthLaw.REACH * systemMetres + 1e-9;
  }

  /** One possible curve. */
  public static final class Outcome {
    private final Baseline baseline;
    private final Distortion distortion;

    private Outcome(Baseline baseline, Distortion distortion) {
      this.baseline = baseline;
      this.distortion = distortion;
    }

    /** V at a gap, µm. */
    public double volts(double gap) {
      return distortion.volts(baseline, gap);
    }

    /** mV/µm at a gap, µm. */
    public double sensitivity(double gap) {
      return distortion.sensitivity(baseline, gap);
    }

    /** The gap, µm, that gives that output; NaN where none does. */
    public double gapAt(double volts) {
      return distortion.gapAt(baseline, volts);
    }
  }

  /**
   * A value with the interval in which it lies with about 95 %.
   *
   * @param middle at the law's own exponent and slope
   */
  public record Spread(double middle, double low, double high) {}

  /** The likeliest curve. */
  public Outcome expected() {
    return new Outcome(baseline, Distortion.along(law.n() * lnRatio, law.c()));
  }

  /**
   * How far the law lets a value of the curve vary: two standard deviations over its exponents and
   * slopes, about the value of the likeliest curve. What comes out as NaN is left out.
   */
  public Spread spread(ToDoubleFunction<Outcome> what) {
    double weight = 0;
    double sum = 0;
    double squares = 0;
    for (Likelihood.Node node : nodes) {
      double result = what.applyAsDouble(new Outcome(baseline, node.distortion()));
      if (!Double.isNaN(result)) {
        weight += node.weight();
        sum += node.weight() * result;
        squares += node.weight() * result * result;
      }
    }
    double mean = sum / weight;
    double deviation = Math.sqrt(Math.max(0, squares / weight - mean * mean));
    double middle = what.applyAsDouble(expected());
    return new Spread(middle, middle - COVERAGE * deviation, middle + COVERAGE * deviation);
  }
}
