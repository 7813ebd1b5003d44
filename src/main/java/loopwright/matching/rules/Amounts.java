package loopwright.matching.rules;

import java.math.BigDecimal;
import java.math.RoundingMode;
import loopwright.matching.Range;
import loopwright.units.Numbers;
import loopwright.units.Unit;

/** Quantities in sentences, rounded for reading; what is compared is never rounded. */
final class Amounts {
  private Amounts() {}

  /** {@code −10.4 V}, at most two decimals. */
  static String volts(double volts) {
    return rounded(volts, 2) + " V";
  }

  static String volts(BigDecimal volts) {
    return signed(Numbers.plain(volts)) + " V";
  }

  /** {@code −19 V … −1.3 V}; a side that nobody said is a question mark. */
  static String voltsRange(Range range) {
    BigDecimal low = range.low();
    BigDecimal high = range.high();
    return (low == null ? "?" : volts(low)) + " … " + (high == null ? "?" : volts(high));
  }

  /** A gap in the unit people use there: whole µm, or mil with one decimal. */
  static String gap(double micrometres, Unit unit) {
    return unit == Unit.MIL
        ? rounded(Unit.MIL.fromCanonical(micrometres), 1) + " mil"
        : rounded(micrometres, 0) + " µm";
  }

  /** {@code 250 to 2250 µm}. */
  static String gaps(double fromMicrometres, double toMicrometres, Unit unit) {
    String from = gap(fromMicrometres, unit);
    return from.substring(0, from.lastIndexOf(' ')) + " to " + gap(toMicrometres, unit);
  }

  static String plain(BigDecimal number) {
    return signed(Numbers.plain(number));
  }

  /** {@code +25 %}, {@code −9 %}: whole percent with its sign. */
  static String percent(double share) {
    String text = rounded(share * 100, 0);
    return (share > 0 && !text.equals("0") ? "+" : "") + text + " %";
  }

  static String rounded(double number, int decimals) {
    BigDecimal rounded = new BigDecimal(number).setScale(decimals, RoundingMode.HALF_EVEN);
    return signed(rounded.signum() == 0 ? "0" : Numbers.plain(rounded));
  }

  private static String signed(String number) {
    return number.replace('-', '\u2212');
  }
}
