package loopwright.certificate;

import loopwright.calibration.Evidence;
import loopwright.units.Reported;
import loopwright.units.Unit;

/** Under what a calibration was taken, in both units. */
final class Surroundings {
  private Surroundings() {}

  static String temperature(Evidence evidence) {
    return evidence
        .conditions()
        .temperature()
        .map(t -> both(t, Unit.CELSIUS, Unit.FAHRENHEIT, "%.1f"))
        .orElse("not recorded");
  }

  /** Begins with a comma; empty where nobody wrote it down. */
  static String runOut(Evidence evidence) {
    return evidence
        .conditions()
        .runOut()
        .map(r -> ", run-out " + both(r, Unit.MICROMETRE, Unit.MIL, "%.3g") + " pk-pk")
        .orElse("");
  }

  /** As typed, and in the other unit. */
  private static String both(Reported typed, Unit one, Unit two, String digits) {
    Unit other = typed.unit() == one ? two : one;
    return typed
        + " ("
        + Printed.say(digits, other.fromCanonical(typed.canonical()))
        + " "
        + other.symbol()
        + ")";
  }
}
