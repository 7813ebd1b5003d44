package loopwright.units;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Reads numbers as people type them: decimal point or decimal comma, ASCII or typographic minus. A
 * text with both marks, or with one mark twice, could mean two numbers and is not read at all.
 */
public final class Numbers {
  private static final Pattern PLAIN =
      Pattern.compile("[+-]?(\\d{1,15}([.,]\\d{0,30})?|[.,]\\d{1,30})([eE][+-]?\\d{1,3})?");

  private Numbers() {}

  /** The number, or empty when the text is not one number beyond doubt. */
  public static Optional<BigDecimal> read(String text) {
    String cleaned = text.strip().replace('\u2212', '-').replace('\u2013', '-');
    if (!PLAIN.matcher(cleaned).matches()) {
      return Optional.empty();
    }
    return Optional.of(new BigDecimal(cleaned.replace(',', '.')));
  }

  /** The shortest text that reads back as the same number: no exponent, no trailing zeros. */
  public static String plain(BigDecimal number) {
    BigDecimal stripped = number.stripTrailingZeros();
    return (stripped.scale() < 0 ? stripped.setScale(0) : stripped).toPlainString();
  }
}
