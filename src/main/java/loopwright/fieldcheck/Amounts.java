package loopwright.fieldcheck;

import java.util.Locale;

/** Amounts in findings: in both units, since a finding is kept as it was told. */
final class Amounts {
  private static final double MICROMETRES_PER_MIL = 25.4;

  private Amounts() {}

  static String gap(double micrometres) {
    return number("%.1f", micrometres)
        + " µm ("
        + number("%.2f", micrometres / MICROMETRES_PER_MIL)
        + " mil)";
  }

  static String slope(double millivoltsPerMicrometre) {
    return number("%.3f", millivoltsPerMicrometre)
        + " mV/µm ("
        + number("%.1f", millivoltsPerMicrometre * MICROMETRES_PER_MIL)
        + " mV/mil)";
  }

  static String ohm(double ohms) {
    return number("%.2f", ohms) + " Ω";
  }

  static String number(String pattern, double number) {
    return String.format(Locale.ROOT, pattern, number).replace('-', '\u2212');
  }
}
