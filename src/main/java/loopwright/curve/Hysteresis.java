package loopwright.curve;

import java.util.List;
import java.util.Optional;

/**
 * The largest difference between the up and the down run at one gap, at the judged readings of the
 * up run, the down run interpolated where it has no reading. No limit applies to it.
 *
 * @param millivolts up minus down, as a magnitude
 * @param micrometres the same on the profile's slope
 * @param atGapMicrometres where
 */
public record Hysteresis(double millivolts, double micrometres, double atGapMicrometres) {

  /** Empty when the runs have no gap in common. */
  static Optional<Hysteresis> between(
      List<CurvePoint> up, List<CurvePoint> down, double nominalSlope) {
    Hysteresis largest = null;
    for (CurvePoint point : up) {
      var below = Interpolated.volts(down, point.gapMicrometres());
      if (!point.judged() || below.isEmpty()) {
        continue;
      }
      double millivolts = 1000 * Math.abs(point.volts() - below.getAsDouble());
      if (largest == null || millivolts > largest.millivolts) {
        largest = new Hysteresis(millivolts, millivolts / nominalSlope, point.gapMicrometres());
      }
    }
    return Optional.ofNullable(largest);
  }
}
