package loopwright.trend;

/**
 * How long a drift takes to use up what is left of a tolerance: u(t) = √(u₀² + (d t)²) reaches L at
 * t = √(L² − u₀²)/d.
 */
public final class DriftInterval {
  private DriftInterval() {}

  /**
   * @param left of the tolerance, L
   * @param standardUncertainty at the calibration, u₀
   * @param drift per month, d, above zero
   * @return months; 0 where the uncertainty alone uses up the tolerance
   */
  public static double months(double left, double standardUncertainty, double drift) {
    if (!(drift > 0)) {
      throw new IllegalArgumentException("Without a drift there is no such interval.");
    }
    return left <= standardUncertainty
        ? 0
        : Math.sqrt(left * left - standardUncertainty * standardUncertainty) / drift;
  }
}
