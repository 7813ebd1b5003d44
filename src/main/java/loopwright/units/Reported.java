package loopwright.units;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * A value as a person or a file gave it: the text, its unit and the number it stands for. The text
 * is kept because 1.50 says more than 1.5, and because what was typed must show again exactly so.
 *
 * @param typed the text, blanks stripped
 * @param unit the unit it was typed in
 * @param amount the number in that unit
 */
public record Reported(String typed, Unit unit, BigDecimal amount) {

  /** Reads the text as a number in that unit; empty when it isn't a number. */
  public static Optional<Reported> read(String text, Unit unit) {
    return Numbers.read(text).map(amount -> new Reported(text.strip(), unit, amount));
  }

  /** In the canonical unit of the dimension (µm, m, V, mV/µm, Hz, °C). */
  public double canonical() {
    return unit.toCanonical(amount).doubleValue();
  }

  /** As typed, with its unit. */
  @Override
  public String toString() {
    return typed + " " + unit.symbol();
  }
}
