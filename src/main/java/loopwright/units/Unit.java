package loopwright.units;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * The one table of units. A value x in a unit is {@code (x − offset) · numerator / divisor} in the
 * canonical unit of its {@link Dimension}.
 *
 * <p>Factors are exact: 1 in = 25.4 mm by international agreement of 1959, so 1 mil = 25.4 µm and 1
 * ft = 0.3048 m; 1 cpm = 1 r/min = 1/60 Hz; °C = (°F − 32) · 5/9 (NIST SP 811, 2008, appendix B.8).
 */
public enum Unit {
  MICROMETRE("µm", Dimension.GAP, "1", "1", "0"),
  MIL("mil", Dimension.GAP, "25.4", "1", "0"),
  METRE("m", Dimension.LENGTH, "1", "1", "0"),
  FOOT("ft", Dimension.LENGTH, "0.3048", "1", "0"),
  VOLT("V", Dimension.VOLTAGE, "1", "1", "0"),
  MILLIVOLT("mV", Dimension.VOLTAGE, "0.001", "1", "0"),
  MILLIVOLT_PER_MICROMETRE("mV/µm", Dimension.SCALE_FACTOR, "1", "1", "0"),
  MILLIVOLT_PER_MIL("mV/mil", Dimension.SCALE_FACTOR, "1", "25.4", "0"),
  HERTZ("Hz", Dimension.FREQUENCY, "1", "1", "0"),
  CYCLES_PER_MINUTE("cpm", Dimension.FREQUENCY, "1", "60", "0"),
  CELSIUS("°C", Dimension.TEMPERATURE, "1", "1", "0"),
  FAHRENHEIT("°F", Dimension.TEMPERATURE, "5", "9", "32"),
  REVOLUTIONS_PER_MINUTE("r/min", Dimension.FREQUENCY, "1", "60", "0"),
  OHM("Ω", Dimension.RESISTANCE, "1", "1", "0"),
  KILOHM("kΩ", Dimension.RESISTANCE, "1000", "1", "0"),
  MEGOHM("MΩ", Dimension.RESISTANCE, "1000000", "1", "0"),
  SECOND("s", Dimension.DURATION, "1", "1", "0"),
  DEGREE("°", Dimension.ANGLE, "1", "1", "0"),
  PERCENT("%", Dimension.RATIO, "0.01", "1", "0"),
  DECIBEL("dB", Dimension.LEVEL, "1", "1", "0"),
  PICOFARAD_PER_METRE("pF/m", Dimension.CAPACITANCE_PER_LENGTH, "1", "1", "0"),
  PICOFARAD_PER_FOOT("pF/ft", Dimension.CAPACITANCE_PER_LENGTH, "1", "0.3048", "0");

  private final String symbol;
  private final Dimension dimension;
  private final BigDecimal numerator;
  private final BigDecimal divisor;
  private final BigDecimal offset;

  Unit(String symbol, Dimension dimension, String numerator, String divisor, String offset) {
    this.symbol = symbol;
    this.dimension = dimension;
    this.numerator = new BigDecimal(numerator);
    this.divisor = new BigDecimal(divisor);
    this.offset = new BigDecimal(offset);
  }

  public String symbol() {
    return symbol;
  }

  public Dimension dimension() {
    return dimension;
  }

  /**
   * The value in the dimension's canonical unit, correctly rounded to 34 digits.
   *
   * @param amount in this unit
   */
  public BigDecimal toCanonical(BigDecimal amount) {
    return divided(amount.subtract(offset).multiply(numerator), divisor);
  }

  /** The value in the dimension's canonical unit as the nearest double. */
  public double toCanonical(double amount) {
    return toCanonical(new BigDecimal(Double.toString(amount))).doubleValue();
  }

  /**
   * The value in this unit.
   *
   * @param canonical in the canonical unit of the dimension
   */
  public BigDecimal fromCanonical(BigDecimal canonical) {
    return divided(canonical.multiply(divisor), numerator).add(offset);
  }

  /** Division by one is left out: it would work out 34 digits only to drop them again. */
  private static BigDecimal divided(BigDecimal amount, BigDecimal by) {
    return by.equals(BigDecimal.ONE)
        ? amount.round(MathContext.DECIMAL128)
        : amount.divide(by, MathContext.DECIMAL128);
  }

  /** The value in this unit as the nearest double. */
  public double fromCanonical(double canonical) {
    return fromCanonical(new BigDecimal(Double.toString(canonical))).doubleValue();
  }

  /**
   * The unit a person or a file names: its symbol in any case, with {@code u} for µ and {@code deg}
   * for °. Empty when no unit is meant by that word.
   */
  public static Optional<Unit> named(String word) {
    String plain = plain(word);
    return Arrays.stream(values()).filter(unit -> plain(unit.symbol).equals(plain)).findFirst();
  }

  private static String plain(String word) {
    return word.strip()
        .toLowerCase(Locale.ROOT)
        .replace('µ', 'u')
        .replace('μ', 'u')
        .replace("deg", "°")
        .replace(" ", "");
  }
}
