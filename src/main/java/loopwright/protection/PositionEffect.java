package loopwright.protection;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What the curve does to a position channel. Shown = s · (V − V_zero)/S_c with s = +1 where
 * movement toward the probe counts as positive, −1 where away; so a set point A acts where s ·
 * (V_t(x) − V_zero)/S_c = A. True position x = s · (g_zero − g), with g_zero the gap at which the
 * loop gave V_zero when it was right. For a line x = (A · S_c − s · (V_t(0) − V_zero))/S_t: an
 * offset makes one side early and the other late.
 *
 * @param zeroGap g_zero, µm
 * @param shownAtZero what the monitor shows at true zero, µm with its sign
 * @param setPoints positions from zero
 */
public record PositionEffect(double zeroGap, double shownAtZero, List<ActsAt> setPoints) {

  /**
   * @param zeroGap µm, within the curve
   * @param scaleFactor S_c, mV/µm
   * @param zeroVolts V_zero
   * @param positive s
   */
  public static PositionEffect of(
      OutputCurve curve,
      double zeroGap,
      double scaleFactor,
      double zeroVolts,
      int positive,
      List<SetPoint> setPoints) {
    return new PositionEffect(
        zeroGap,
        positive * (curve.volts(zeroGap) - zeroVolts) / scaleFactor * 1000,
        setPoints.stream()
            .map(point -> actsAt(curve, zeroGap, scaleFactor, zeroVolts, positive, point))
            .toList());
  }

  private static ActsAt actsAt(
      OutputCurve curve,
      double zeroGap,
      double scaleFactor,
      double zeroVolts,
      int positive,
      SetPoint point) {
    double meant = point.micrometres();
    double volts = zeroVolts + positive * meant * scaleFactor / 1000;
    OptionalDouble gap = curve.gapAt(volts);
    double end =
        positive * meant > 0 ? curve.known().nearMicrometres() : curve.known().farMicrometres();
    return new ActsAt(
        point,
        meant,
        gap.isPresent()
            ? OptionalDouble.of(positive * (zeroGap - gap.getAsDouble()))
            : OptionalDouble.empty(),
        positive * (zeroGap - end));
  }
}
