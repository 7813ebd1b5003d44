package loopwright.protection;

import java.util.OptionalDouble;

/**
 * Where a set point really acts.
 *
 * @param meant µm, as the owner meant it
 * @param acts true µm at which the monitor shows the set point; empty where the curve's readings
 *     don't reach so far
 * @param reach largest true movement that the readings answer for in that direction, µm
 */
public record ActsAt(SetPoint setPoint, double meant, OptionalDouble acts, double reach) {
  /** Nearer to what was meant than this share counts as meant; own choice. */
  private static final double SAME = 0.01;

  /** How it stands to what was meant. */
  public enum Timing {
    AS_MEANT,
    EARLY,
    LATE,
    NOT_WITHIN_THE_CURVE
  }

  public Timing timing() {
    if (acts.isEmpty()) {
      return Timing.NOT_WITHIN_THE_CURVE;
    }
    double beyond = (acts.getAsDouble() - meant) * Math.signum(meant);
    if (Math.abs(beyond) <= SAME * Math.abs(meant)) {
      return Timing.AS_MEANT;
    }
    return beyond > 0 ? Timing.LATE : Timing.EARLY;
  }
}
