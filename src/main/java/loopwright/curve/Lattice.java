package loopwright.curve;

/**
 * A grid's numbers in µm, worked out once for comparing many gaps.
 *
 * @param tolerance {@link Grid#TOLERANCE} of the step
 */
record Lattice(double from, double to, double step, double tolerance) {
  /** A hair of rounding must not decide whether a step is on the grid. */
  private static final double HAIR = 1e-9;

  static Lattice of(Grid grid) {
    return new Lattice(
        grid.fromMicrometres(),
        grid.toMicrometres(),
        grid.stepMicrometres(),
        grid.toleranceMicrometres());
  }

  /** Is that gap inside the range, its ends included with the tolerance? */
  boolean holds(double gap) {
    return gap >= from - reach() && gap <= to + reach();
  }

  /** Is that the width of an increment? */
  boolean isWhole(double width) {
    return Math.abs(width - step) <= reach();
  }

  /** Does a stretch begin and end where the range does? */
  boolean isCoveredBy(GapRange range) {
    return range.fromMicrometres() <= from + reach() && range.toMicrometres() >= to - reach();
  }

  private double reach() {
    return tolerance + HAIR * step;
  }
}
