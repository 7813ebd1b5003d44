package loopwright.protection;

import java.util.Optional;
import java.util.OptionalDouble;
import loopwright.numerics.MonotoneCurve;

/**
 * What a loop puts out over the gap: V, falling. Nothing is claimed beyond its readings.
 *
 * @param known from the first reading to the last
 * @param straight where it is straight within the limits that judged it; empty where it nowhere is
 */
public record OutputCurve(MonotoneCurve curve, GapSpan known, Optional<GapSpan> straight) {
  /**
   * Smoothly through readings.
   *
   * @param gaps µm, rising
   * @param volts V, falling
   */
  public static OutputCurve through(double[] gaps, double[] volts, Optional<GapSpan> straight) {
    return new OutputCurve(
        MonotoneCurve.through(gaps, volts), new GapSpan(gaps[0], gaps[gaps.length - 1]), straight);
  }

  /**
   * A straight line.
   *
   * @param range over which it holds
   * @param startVolts at its nearest gap
   * @param millivoltsPerMicrometre slope, positive
   */
  public static OutputCurve line(GapSpan range, double startVolts, double millivoltsPerMicrometre) {
    double length = range.farMicrometres() - range.nearMicrometres();
    return through(
        new double[] {range.nearMicrometres(), range.farMicrometres()},
        new double[] {startVolts, startVolts - millivoltsPerMicrometre * length / 1000},
        Optional.of(range));
  }

  /**
   * Through those readings about a gap that fall from one to the next: a saturated or dead end is
   * left out. Empty where the curve doesn't fall at that gap.
   *
   * @param gaps µm, rising
   * @param volts V
   */
  public static Optional<OutputCurve> falling(
      double[] gaps, double[] volts, double gap, Optional<GapSpan> straight) {
    int at = -1;
    for (int i = 1; i < gaps.length; i++) {
      if (gap >= gaps[i - 1] && gap <= gaps[i] && volts[i] < volts[i - 1]) {
        at = i;
        break;
      }
    }
    if (at < 0) {
      return Optional.empty();
    }
    int from = at - 1;
    while (from > 0 && volts[from] < volts[from - 1]) {
      from--;
    }
    int to = at;
    while (to < gaps.length - 1 && volts[to + 1] < volts[to]) {
      to++;
    }
    double[] someGaps = java.util.Arrays.copyOfRange(gaps, from, to + 1);
    double[] someVolts = java.util.Arrays.copyOfRange(volts, from, to + 1);
    return Optional.of(through(someGaps, someVolts, straight));
  }

  /** V at a gap, µm. */
  public double volts(double gap) {
    return curve.at(gap);
  }

  /** Local sensitivity at a gap, mV/µm, positive. */
  public double sensitivity(double gap) {
    return -1000 * curve.slopeAt(gap);
  }

  /** The gap, µm, at which the output is that; empty beyond the readings. */
  public OptionalDouble gapAt(double volts) {
    return curve.whereIs(volts);
  }
}
