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
    return both(format("%.3f mV/µm", slope), format("%.1f mV/mil", slope * MICROMETRES_PER_MIL));
  }

  String slopeNumber(double slope) {
    return units.metric() ? format("%.3f", slope) : format("%.1f", slope * MICROMETRES_PER_MIL);
  }

  /** {@code below 0.001 mV/µm} where rounding would leave nothing. */
  String error(double slope) {
    double least = units.metric() ? 0.001 : 0.01 / MICROMETRES_PER_MIL;
    return slope < least / 2 ? "below " + slope(least) : slope(slope);
  }

  /** A gap in both units, the reader's first. */
  String gap(double micrometres) {
    return both(gapMetric(micrometres) + " µm", gapMil(micrometres) + " mil");
  }

  /** {@code 250 to 2250 µm (9.8 to 88.6 mil)}. */
  String gaps(double from, double to) {
    return both(
        gapMetric(from) + " to " + gapMetric(to) + " µm",
        gapMil(from) + " to " + gapMil(to) + " mil");
  }

  private String both(String metric, String mil) {
    return units.metric() ? metric + " (" + mil + ")" : mil + " (" + metric + ")";
  }

  private static String gapMetric(double micrometres) {
    return format("%.0f", micrometres);
  }

  private static String gapMil(double micrometres) {
    return format("%.1f", micrometres / MICROMETRES_PER_MIL);
  }

  /** {@code 12.1 µm}, {@code 0.48 mil}. */
  String deviation(double micrometres) {
    return units.metric() ? inMicrometres(micrometres) : inMil(micrometres);
  }

  /** In both units, the reader's first. */
  String deviationBoth(double micrometres) {
    return both(inMicrometres(micrometres), inMil(micrometres));
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
