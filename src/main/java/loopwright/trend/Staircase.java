package loopwright.trend;

/**
 * Automatic adjustment: found within its limits, the interval grows by a share; found outside, it
 * shrinks by one. The two balance at a target reliability R when (1 + a)^R (1 − b)^(1 − R) = 1.
 *
 * @param growth a, above 0
 * @param target R, above 0 and below 1
 * @see "ILAC-G24:2022 / OIML D 10:2022, automatic adjustment or staircase (from memory)"
 */
public record Staircase(double growth, double target) {
  /** Own choice: steps of 5 %, balanced where nine of ten are found within their limits. */
  public static final Staircase USUAL = new Staircase(0.05, 0.90);

  /** b. */
  public double shrinkage() {
    return 1 - Math.pow(1 + growth, -target / (1 - target));
  }

  /** The next interval, in the unit of the present one. */
  public double next(double present, boolean within) {
    return present * (within ? 1 + growth : 1 - shrinkage());
  }
}
