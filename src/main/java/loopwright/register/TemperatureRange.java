package loopwright.register;

import java.math.BigDecimal;
import java.util.Locale;
import loopwright.units.Numbers;
import loopwright.units.Unit;

/**
 * Temperatures at the probe at which a profile's limits hold.
 *
 * @param from °C, inclusive
 * @param to °C, inclusive
 */
public record TemperatureRange(BigDecimal from, BigDecimal to) {

  /** Refuses a range that doesn't run upwards. */
  public TemperatureRange {
    if (from.compareTo(to) >= 0) {
      throw new IllegalArgumentException("The lower temperature lies below the higher one.");
    }
  }

  public boolean holds(double celsius) {
    return celsius >= from.doubleValue() - 1e-9 && celsius <= to.doubleValue() + 1e-9;
  }

  /** In both units. */
  public String inWords() {
    return Numbers.plain(from)
        + " to "
        + Numbers.plain(to)
        + " °C ("
        + fahrenheit(from)
        + " to "
        + fahrenheit(to)
        + " °F)";
  }

  private static String fahrenheit(BigDecimal celsius) {
    return String.format(Locale.ROOT, "%.0f", Unit.FAHRENHEIT.fromCanonical(celsius.doubleValue()));
  }
}
