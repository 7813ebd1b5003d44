package loopwright.fieldcheck;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import loopwright.units.Length;

/**
 * Direct-current resistance of leads and cables of the 8 mm class by nominal length: typical values
 * of the trade, as a training handout prints them (seen; no standard gives any).
 */
final class ResistanceTable {
  static final String BASIS =
      "resistances of the 8 mm class as a training handout of the trade prints them; no standard";

  /**
   * A resistance and how far off it may be, Ω.
   *
   * @param tolerance at most, both ways
   */
  record Expected(double ohms, double tolerance) {
    Expected plus(Expected other) {
      return new Expected(ohms + other.ohms, tolerance + other.tolerance);
    }

    boolean allows(double measured) {
      return Math.abs(measured - ohms) <= tolerance;
    }
  }

  /** Probe with its lead, centre to outer, by the lead's length in m. */
  private static final Map<String, Expected> PROBES =
      Map.of(
          "0.5", new Expected(7.45, 0.50),
          "1", new Expected(7.59, 0.50),
          "1.5", new Expected(7.73, 0.50),
          "2", new Expected(7.88, 0.50),
          "5", new Expected(8.73, 0.70),
          "9", new Expected(9.87, 0.90));

  /** Extension cable, centre and outer conductor together, by its length in m. */
  private static final Map<String, Expected> CABLES =
      Map.of(
          "3", cable(0.66, 0.10, 0.20, 0.04),
          "3.5", cable(0.77, 0.12, 0.23, 0.05),
          "4", cable(0.88, 0.13, 0.26, 0.05),
          "4.5", cable(0.99, 0.15, 0.30, 0.06),
          "7", cable(1.54, 0.23, 0.46, 0.09),
          "7.5", cable(1.65, 0.25, 0.49, 0.10),
          "8", cable(1.76, 0.26, 0.53, 0.11),
          "8.5", cable(1.87, 0.28, 0.56, 0.11));

  static final BigDecimal TIP_MILLIMETRES = BigDecimal.valueOf(8);

  private ResistanceTable() {}

  private static Expected cable(double core, double coreOff, double outer, double outerOff) {
    return new Expected(core + outer, coreOff + outerOff);
  }

  static Optional<Expected> probe(Length lead) {
    return Optional.ofNullable(PROBES.get(key(lead)));
  }

  static Optional<Expected> cable(Length cable) {
    return Optional.ofNullable(CABLES.get(key(cable)));
  }

  private static String key(Length length) {
    return length.metres().toPlainString();
  }
}
