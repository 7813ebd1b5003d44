package loopwright.trend;

import org.apache.commons.statistics.distribution.BetaDistribution;

/**
 * How often a loop was found within its limits.
 *
 * @param within how many of them were
 * @param found how many there are, one at least
 */
public record Reliability(int within, int found) {

  /** Refuses counts that can't be. */
  public Reliability {
    if (found < 1 || within < 0 || within > found) {
      throw new IllegalArgumentException("Of " + found + " can't be " + within + ".");
    }
  }

  /** Share of those within, 0 to 1. */
  public double observed() {
    return (double) within / found;
  }

  /**
   * Lower end of the exact two-sided interval of the true share.
   *
   * @param confidence for instance 0.95
   * @see "Clopper and Pearson, Biometrika 26 (1934) 404–413"
   */
  public double lower(double confidence) {
    return within == 0
        ? 0
        : BetaDistribution.of(within, found - within + 1.0)
            .inverseCumulativeProbability((1 - confidence) / 2);
  }

  /** Upper end of the same. */
  public double upper(double confidence) {
    return within == found
        ? 1
        : BetaDistribution.of(within + 1.0, found - within)
            .inverseSurvivalProbability((1 - confidence) / 2);
  }

  /**
   * The interval that would bring the target, if failures come at an even rate: R(t) = exp(−λt), so
   * I = I₀ ln R_target / ln R_observed.
   *
   * @param months between the calibrations that were counted
   * @param target above 0 and below 1
   * @return months; infinite where nothing was ever found outside
   */
  public double interval(double months, double target) {
    return within == found
        ? Double.POSITIVE_INFINITY
        : within == 0 ? 0 : months * Math.log(target) / Math.log(observed());
  }
}
