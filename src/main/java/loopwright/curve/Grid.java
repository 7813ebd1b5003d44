package loopwright.curve;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.IntStream;
import loopwright.units.Dimension;
import loopwright.units.Numbers;
import loopwright.units.Unit;

/**
 * The gaps at which a profile wants readings, in the unit they are set in: 250 to 2,250 µm by 250
 * and 10 to 90 mil by 10 are two grids, not one and its conversion.
 *
 * @param unit µm or mil
 * @param from the first gap
 * @param to the last gap, a whole number of steps away
 * @param step the increment that ISF limits apply to
 */
public record Grid(Unit unit, BigDecimal from, BigDecimal to, BigDecimal step) {
  /**
   * How far, as a share of the increment, an increment's width or an end of the range may be off
   * the grid and still count as on it: a micrometer is set by hand. Common practice, no source.
   */
  static final double TOLERANCE = 0.05;

  /** Refuses another dimension, an empty range and a range that isn't whole steps. */
  public Grid {
    if (unit.dimension() != Dimension.GAP) {
      throw new IllegalArgumentException("A grid is one of gaps.");
    }
    if (from.signum() < 0 || step.signum() <= 0 || from.compareTo(to) >= 0) {
      throw new IllegalArgumentException("A grid rises from its first gap to its last.");
    }
    if (to.subtract(from).remainder(step).signum() != 0) {
      throw new IllegalArgumentException("A grid is a whole number of increments long.");
    }
  }

  public static Grid of(Unit unit, String from, String to, String step) {
    return new Grid(unit, new BigDecimal(from), new BigDecimal(to), new BigDecimal(step));
  }

  public double fromMicrometres() {
    return unit.toCanonical(from).doubleValue();
  }

  public double toMicrometres() {
    return unit.toCanonical(to).doubleValue();
  }

  public double stepMicrometres() {
    return unit.toCanonical(step).doubleValue();
  }

  double toleranceMicrometres() {
    return TOLERANCE * stepMicrometres();
  }

  /** Is that gap inside the range, its ends included with the grid's tolerance? */
  boolean holds(double gapMicrometres) {
    return Lattice.of(this).holds(gapMicrometres);
  }

  /** The gaps to set, in the grid's unit. */
  public List<BigDecimal> positions() {
    int steps = to.subtract(from).divideToIntegralValue(step).intValueExact();
    return IntStream.rangeClosed(0, steps)
        .mapToObj(i -> from.add(step.multiply(BigDecimal.valueOf(i))))
        .toList();
  }

  /** {@code 250 to 2250 µm by 250}. */
  @Override
  public String toString() {
    return Numbers.plain(from)
        + " to "
        + Numbers.plain(to)
        + " "
        + unit.symbol()
        + " by "
        + Numbers.plain(step);
  }
}
