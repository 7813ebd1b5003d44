package loopwright.calibration;

import java.util.Locale;
import loopwright.web.UnitsShown;

/**
 * Numbers of a curve rounded for reading, in the reader's units; the machine's locale is no matter.
 */
final class Figures {
  private static final double MICROMETRES_PER_MIL = 25.4;

  private final UnitsShown units;

  Figures(UnitsShown units) {
    this.units = units;
  }

  /** {@code 7.874 mV/µm}, {@code 200.00 mV/mil}. */
  String slope(double slope) {
    return units.metric()
        ? format("%.3f mV/µm", slope)
        : format("%.2f mV/mil", slope * MICROMETRES_PER_MIL);
  }

  /** In both units, the reader's first. */
  String slopeBoth(double slope) {
    String metric = format("%.3f mV/µm", slope);
    String mil = format("%.1f mV/mil", slope * MICROMETRES_PER_MIL);
    return units.metric() ? metric + " (" + mil + ")" : mil + " (" + metric + ")";
  }

  String slopeNumber(double slope) {
    return units.metric() ? format("%.3f", slope) : format("%.1f", slope * MICROMETRES_PER_MIL);
  }

  /** A gap to the whole µm. */
  String gap(double micrometres) {
    return units.metric()
        ? format("%.0f µm", micrometres)
        : format("%.1f mil", micrometres / MICROMETRES_PER_MIL);
  }

  /** {@code 12.1 µm}, {@code 0.48 mil}. */
  String deviation(double micrometres) {
    return units.metric() ? inMicrometres(micrometres) : inMil(micrometres);
  }

  /** In both units, the reader's first. */
  String deviationBoth(double micrometres) {
    return units.metric()
        ? inMicrometres(micrometres) + " (" + inMil(micrometres) + ")"
        : inMil(micrometres) + " (" + inMicrometres(micrometres) + ")";
  }

  private static String inMicrometres(double micrometres) {
    return format("%.1f µm", micrometres);
  }

  private static String inMil(double micrometres) {
    return format("%.2f mil", micrometres / MICROMETRES_PER_MIL);
  }

  /** With its sign, without its unit. */
  String deviationNumber(double micrometres) {
    return units.metric()
        ? format("%+.1f", micrometres)
        : format("%+.2f", micrometres / MICROMETRES_PER_MIL);
  }

  /** With its sign: {@code −6.0 %}. */
  static String percent(double percent) {
    return format("%+.1f %%", percent);
  }

  /** {@code −10.02 V}. */
  static String volts(double volts) {
    return format("%.2f V", volts);
  }

  private static String format(String pattern, double number) {
    return String.format(Locale.ROOT, pattern, number).replace('-', '−');
  }
}
