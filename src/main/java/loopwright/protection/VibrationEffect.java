package loopwright.protection;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What the curve does to a vibration channel. A movement of a peak to peak about the gap g swings
 * the output by V(g − a/2) − V(g + a/2), and the monitor shows that swing over S_c: for small
 * movements a · S_t/S_c, so that a set point A acts at A · S_c/S_t; for large ones the curve itself
 * counts, not its slope at g.
 *
 * @param gap at which the probe stands, µm
 * @param sensitivity S_t there, mV/µm
 * @param share S_t/S_c: what is shown of a small movement
 * @param setPoints peak to peak
 * @param clipsAt largest movement, µm peak to peak, inside the straight part; empty where the curve
 *     is nowhere straight, 0 where the probe stands outside it
 */
public record VibrationEffect(
    double gap, double sensitivity, double share, List<ActsAt> setPoints, OptionalDouble clipsAt) {
  private static final int HALVINGS = 60;

  /**
   * @param gap µm, within the curve
   * @param scaleFactor S_c, mV/µm
   */
  public static VibrationEffect of(
      OutputCurve curve, double gap, double scaleFactor, List<SetPoint> setPoints) {
    Swing swing = new Swing(curve, gap, scaleFactor);
    return new VibrationEffect(
        gap,
        curve.sensitivity(gap),
        curve.sensitivity(gap) / scaleFactor,
        setPoints.stream().map(swing::actsAt).toList(),
        curve.straight().stream().mapToDouble(span -> span.swingAbout(gap)).findFirst());
  }

  /** Movements about one gap. */
  private record Swing(OutputCurve curve, double gap, double scaleFactor) {

    /** Shown, µm peak to peak, of a true movement, µm peak to peak. */
    double shown(double movement) {
      return 1000
          * (curve.volts(gap - movement / 2) - curve.volts(gap + movement / 2))
          / scaleFactor;
    }

    ActsAt actsAt(SetPoint setPoint) {
      double meant = setPoint.micrometres();
      double reach = curve.known().swingAbout(gap);
      if (shown(reach) < meant) {
        return new ActsAt(setPoint, meant, OptionalDouble.empty(), reach);
      }
      double low = 0;
      double high = reach;
      for (int i = 0; i < HALVINGS; i++) {
        double middle = (low + high) / 2;
        if (shown(middle) < meant) {
          low = middle;
        } else {
          high = middle;
        }
      }
      return new ActsAt(setPoint, meant, OptionalDouble.of((low + high) / 2), reach);
    }
  }
}
