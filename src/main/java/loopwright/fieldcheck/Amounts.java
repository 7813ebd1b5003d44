package loopwright.fieldcheck;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import loopwright.units.Numbers;

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

  /** Whole above 100 Hz, with up to two decimals below. */
  static String hertz(double hertz) {
    BigDecimal rounded =
        BigDecimal.valueOf(hertz).setScale(hertz >= 100 ? 0 : 2, RoundingMode.HALF_EVEN);
    return Numbers.plain(rounded) + " Hz";
  }

  static String number(String pattern, double number) {
    return String.format(Locale.ROOT, pattern, number).replace('-', '\u2212');
  }
}
