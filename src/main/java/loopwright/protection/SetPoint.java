package loopwright.protection;

import java.math.BigDecimal;
import loopwright.units.Unit;

/**
 * A level at which the monitor was told to act.
 *
 * @param name alert, danger
 * @param level as it was entered; positions count from zero with their sign
 * @param unit µm or mil
 */
public record SetPoint(String name, BigDecimal level, Unit unit) {
  double micrometres() {
    return unit.toCanonical(level).doubleValue();
  }
}
