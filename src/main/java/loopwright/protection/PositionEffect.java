package loopwright.protection;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What the curve does to a position channel. Shown = s · (V − V_zero)/S_m with s = +1 where
 * movement toward the probe counts as positive, −1 where away, and S_m what the monitor counts for
 * each µm of movement: its scale factor S_c in front of a collar, S_c · sin θ on a ramp. So a set
 * point A acts where s · (V_t(x) − V_zero)/S_m = A. True position x = s · (g_zero − g)/sin θ, with
 * g_zero the gap at which the loop gave V_zero when it was right. For a line x = (A · S_m − s ·
 * (V_t(0) − V_zero))/(S_t · sin θ): an offset makes one side early and the other late, and the
 * flatter the ramp the more movement it is worth.
 *
 * @param zeroGap g_zero, µm
 * @param shownAtZero what the monitor shows at true zero, µm of movement with its sign
 * @param setPoints positions from zero, movement of the shaft
 * @param ramp that the probe looks at
 * @param rampInScale whether the monitor's scale factor has sin θ in it already
 */
public record PositionEffect(
    double zeroGap, double shownAtZero, List<ActsAt> setPoints, Ramp ramp, boolean rampInScale) {

  /**
   * The monitor's side.
   *
   * @param perMovement S_m, mV for each µm of movement
   * @param zeroVolts V_zero
   * @param positive s
   */
  record Counting(double perMovement, double zeroVolts, int positive) {}

  /**
   * @param zeroGap µm, within the curve
   * @param scaleFactor S_c as told, mV/µm
   * @param own sensitivity of the loop when it was right, mV per µm of gap
   */
  static PositionEffect of(
      OutputCurve curve,
      double zeroGap,
      Ramp ramp,
      double scaleFactor,
      double own,
      MonitorTold told) {
    Counting counting =
        new Counting(
            ramp.perMovement(scaleFactor, own), told.zeroVolts().orElseThrow(), told.positive());
    return new PositionEffect(
        zeroGap,
        counting.positive()
            * (curve.volts(zeroGap) - counting.zeroVolts())
            / counting.perMovement()
            * 1000,
        told.setPoints().stream()
            .filter(point -> point.level().signum() != 0)
            .map(point -> actsAt(curve, zeroGap, ramp, counting, point))
            .toList(),
        ramp,
        ramp.isInside(scaleFactor, own));
  }

  private static ActsAt actsAt(
      OutputCurve curve, double zeroGap, Ramp ramp, Counting counting, SetPoint point) {
    double meant = point.micrometres();
    int positive = counting.positive();
    OptionalDouble gap =
        curve.gapAt(counting.zeroVolts() + positive * meant * counting.perMovement() / 1000);
    double end =
        positive * meant > 0 ? curve.known().nearMicrometres() : curve.known().farMicrometres();
    return new ActsAt(
        point,
        meant,
        gap.isPresent()
            ? OptionalDouble.of(positive * (zeroGap - gap.getAsDouble()) / ramp.sine())
            : OptionalDouble.empty(),
        positive * (zeroGap - end) / ramp.sine());
  }
}
