package loopwright.cause;

import java.util.Locale;
import loopwright.units.Length;
import loopwright.units.Unit;

/** Numbers as a person reads them, rounded, in both systems of units. */
public final class Told {
  private Told() {}

  /** {@code −8.05 V}. */
  public static String volts(double volts) {
    return signed("%.2f V", volts);
  }

  /** {@code 6.914 mV/µm (175.6 mV/mil)}. */
  public static String sensitivity(double millivoltsPerMicrometre) {
    return String.format(
        Locale.ROOT,
        "%.3f mV/µm (%.1f mV/mil)",
        millivoltsPerMicrometre,
        Unit.MILLIVOLT_PER_MIL.fromCanonical(millivoltsPerMicrometre));
  }

  /** {@code 1412 µm (55.6 mil)}. */
  public static String gap(double micrometres) {
    return signed("%.0f µm (", micrometres)
        + signed("%.1f mil)", Unit.MIL.fromCanonical(micrometres));
  }

  /** {@code 5.63 m}. */
  public static String metres(double metres) {
    return String.format(Locale.ROOT, "%.2f m", metres);
  }

  /** {@code 75 %}; what isn't certain is never told as 0 or 100. */
  public static String percent(double probability) {
    if (probability < 0.005) {
      return "under 1 %";
    }
    return probability > 0.995 ? "over 99 %" : Math.round(100 * probability) + " %";
  }

  /** {@code half a metre}, else {@code 1.0 m}. */
  static String difference(Length length) {
    return length.equals(Length.ofMetres("0.5")) ? "half a metre" : length.inMetres();
  }

  private static String signed(String format, double number) {
    return String.format(Locale.ROOT, format, number).replace('-', '\u2212');
  }
}
