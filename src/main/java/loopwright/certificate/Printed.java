package loopwright.certificate;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import loopwright.units.Unit;

/** Numbers as certificates print them: rounded here and nowhere before, minus as minus. */
final class Printed {
  private Printed() {}

  /** {@code 7.8740 mV/µm (200.00 mV/mil)}. */
  static String slopeBoth(double slope) {
    return slopeMetric(slope) + " mV/µm (" + slopeMil(slope) + " mV/mil)";
  }

  static String slopeMetric(double slope) {
    return say("%.4f", slope);
  }

  static String slopeMil(double slope) {
    return say("%.2f", Unit.MILLIVOLT_PER_MIL.fromCanonical(slope));
  }

  /** {@code 12.34 µm (0.486 mil)}. */
  static String gapBoth(double micrometres) {
    return gapMetric(micrometres) + " µm (" + gapMil(micrometres) + " mil)";
  }

  static String gapMetric(double micrometres) {
    return say("%.2f", micrometres);
  }

  static String gapMil(double micrometres) {
    return say("%.3f", Unit.MIL.fromCanonical(micrometres));
  }

  static String volts(double volts) {
    return say("%.3f", volts);
  }

  static String percent(double percent) {
    return say("%+.2f %%", percent);
  }

  /** {@code 0.973}; certainty is never claimed by rounding. */
  static String probability(double p) {
    if (p > 0.9995) {
      return "above 0.999";
    }
    return p < 0.0005 ? "below 0.001" : say("%.3f", p);
  }

  /** Three significant digits. */
  static String significant(double number) {
    if (number == 0) {
      return "0";
    }
    return new BigDecimal(number).round(new MathContext(3)).toPlainString().replace('-', '−');
  }

  static String say(String pattern, double number) {
    String text = String.format(Locale.ROOT, pattern, number);
    return (text.matches("-0\\.?0*( %)?") ? text.substring(1) : text).replace('-', '−');
  }
}
