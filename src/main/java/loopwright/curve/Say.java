package loopwright.curve;

import java.math.BigDecimal;
import java.math.RoundingMode;
import loopwright.units.Numbers;
import loopwright.units.Unit;

/** Numbers in sentences, rounded for reading, in the unit the gaps were typed in. */
final class Say {
  private final Unit gapUnit;

  Say(Unit gapUnit) {
    this.gapUnit = gapUnit;
  }

  /** {@code 1250 µm}, {@code 49.2 mil}. */
  String gap(double micrometres) {
    return gapNumber(micrometres) + " " + gapUnit.symbol();
  }

  /** {@code 250 to 500 µm}. */
  String span(GapRange range) {
    return gapNumber(range.fromMicrometres()) + " to " + gap(range.toMicrometres());
  }

  private String gapNumber(double micrometres) {
    return rounded(gapUnit.fromCanonical(micrometres), gapUnit == Unit.MIL ? 2 : 1);
  }

  /** {@code 7.874 mV/µm}, {@code 200.0 mV/mil}. */
  String scaleFactor(double millivoltsPerMicrometre) {
    Unit unit = gapUnit == Unit.MIL ? Unit.MILLIVOLT_PER_MIL : Unit.MILLIVOLT_PER_MICROMETRE;
    double amount = unit.fromCanonical(millivoltsPerMicrometre);
    return fixed(amount, unit == Unit.MILLIVOLT_PER_MIL ? 1 : 3) + " " + unit.symbol();
  }

  /** {@code −12.1 µm}, {@code +0.48 mil}. */
  String deviation(double micrometres) {
    double amount = gapUnit.fromCanonical(micrometres);
    String sign = amount > 0 ? "+" : "";
    return sign + fixed(amount, gapUnit == Unit.MIL ? 2 : 1) + " " + gapUnit.symbol();
  }

  /** {@code −17.88 V}. */
  static String volts(double volts) {
    return fixed(volts, 2) + " V";
  }

  /** With its sign: {@code −6.0 %}. */
  static String percent(double percent) {
    return (percent > 0 ? "+" : "") + fixed(percent, 1) + " %";
  }

  static String fixed(double number, int decimals) {
    BigDecimal rounded = BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_EVEN);
    return rounded.toPlainString().replace('-', '\u2212');
  }

  private static String rounded(double number, int decimals) {
    BigDecimal rounded = BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_EVEN);
    return Numbers.plain(rounded).replace('-', '\u2212');
  }
}
