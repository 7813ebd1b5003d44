package loopwright.pack;

import java.util.List;
import java.util.OptionalDouble;
import loopwright.curve.Curve;
import loopwright.curve.CurveAnalysis;
import loopwright.curve.CurveReading;
import loopwright.curve.Run;
import loopwright.curve.RunResult;
import loopwright.curve.ToleranceProfile;
import loopwright.matching.NominalLine;
import loopwright.numerics.MonotoneCurve;
import loopwright.problem.Refused;
import org.jspecify.annotations.Nullable;

/**
 * What a driver should give at a gap, and between which limits. The best record there is counts:
 * the last as-left curve of exactly these parts, else the straight line that the family declares.
 *
 * @param curve the last curve, interpolated; null without one
 * @param line µm at which the line of the profile's slope reads 0 V; null when nothing says
 * @param basis in words
 */
record Expectation(@Nullable MonotoneCurve curve, @Nullable Double line, String basis) {
  static final Expectation NOTHING =
      new Expectation(null, null, "Nothing on record says what to expect.");

  /** From a curve that was judged by a profile. */
  static Expectation ofCurve(Curve curve, ToleranceProfile profile, String basis) {
    try {
      RunResult run = CurveAnalysis.of(curve, profile).runs().get(0);
      return new Expectation(through(curve, run.run()), run.zeroVoltsMicrometres(), basis);
    } catch (Refused outsideTheProfile) {
      return NOTHING;
    }
  }

  /** Null where the readings don't run one way. */
  private static @Nullable MonotoneCurve through(Curve curve, Run run) {
    try {
      List<CurveReading> readings = curve.of(run);
      return MonotoneCurve.through(
          readings.stream().mapToDouble(CurveReading::gapMicrometres).toArray(),
          readings.stream().mapToDouble(CurveReading::volts).toArray());
    } catch (IllegalArgumentException turning) {
      return null;
    }
  }

  /** From what a family declares. */
  static Expectation ofFamily(NominalLine nominal, String family) {
    double zero = nominal.gapAt(0);
    return new Expectation(
        null,
        zero,
        "The straight line that family " + family + " declares; no curve of these parts.");
  }

  /**
   * Expected output, V.
   *
   * @param gap µm
   * @param slope mV/µm, of the profile
   */
  OptionalDouble volts(double gap, double slope) {
    if (curve != null) {
      return OptionalDouble.of(curve.at(gap));
    }
    return onLine(gap, slope);
  }

  /** On the line itself, around which the DSL corridor lies. */
  OptionalDouble onLine(double gap, double slope) {
    return line == null ? OptionalDouble.empty() : OptionalDouble.of((line - gap) * slope / 1000);
  }
}
