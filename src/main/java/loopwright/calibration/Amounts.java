package loopwright.calibration;

import java.util.Locale;
import loopwright.web.UnitsShown;

/** Results of budgets (mV/µm, µm) in the reader's units, with a digit more than results alone. */
record Amounts(UnitsShown units) {
  private static final double MICROMETRES_PER_MIL = 25.4;

  /**
   * @param canonicalUnit {@code mV/µm} or {@code µm}
   */
  String amount(String canonicalUnit, double canonical) {
    return number(canonicalUnit, canonical) + " " + symbol(canonicalUnit);
  }

  String number(String canonicalUnit, double canonical) {
    boolean slope = isSlope(canonicalUnit);
    if (units.metric()) {
      return say(slope ? "%.4f" : "%.2f", canonical);
    }
    return slope
        ? say("%.2f", canonical * MICROMETRES_PER_MIL)
        : say("%.3f", canonical / MICROMETRES_PER_MIL);
  }

  String interval(String canonicalUnit, double low, double high) {
    return number(canonicalUnit, low) + " to " + amount(canonicalUnit, high);
  }

  private String symbol(String canonicalUnit) {
    if (units.metric()) {
      return canonicalUnit;
    }
    return isSlope(canonicalUnit) ? "mV/mil" : "mil";
  }

  private static boolean isSlope(String canonicalUnit) {
    return canonicalUnit.startsWith("mV");
  }

  private static String say(String pattern, double number) {
    return String.format(Locale.ROOT, pattern, number).replace('-', '−');
  }
}
