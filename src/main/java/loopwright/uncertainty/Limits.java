package loopwright.uncertainty;

/**
 * Limits of a tolerance, in the unit of what they limit. They are set by the profile and exact.
 *
 * @param lower minus infinity for none
 * @param upper infinity for none
 */
public record Limits(double lower, double upper) {
  /** As the profiles count: this share beyond a limit still conforms. */
  private static final double INCLUSIVE = 1e-9;

  /** Refuses an upper limit that is not above the lower one, and limits that limit nothing. */
  public Limits {
    if (!(lower < upper) || (Double.isInfinite(lower) && Double.isInfinite(upper))) {
      throw new IllegalArgumentException("A tolerance has an upper limit above its lower one.");
    }
  }

  public static Limits atMost(double upper) {
    return new Limits(Double.NEGATIVE_INFINITY, upper);
  }

  /** Inside, when both limits are drawn in by that much (or put out, if negative)? */
  boolean hold(double value, double guard) {
    return value >= lower + guard - INCLUSIVE * size(lower)
        && value <= upper - guard + INCLUSIVE * size(upper);
  }

  private static double size(double limit) {
    return Double.isInfinite(limit) ? 0 : Math.abs(limit);
  }

  /**
   * What a measured value may be off by: half the width between two limits; the limit itself where
   * there is one, which for a magnitude is its distance from nothing.
   */
  public double tolerance() {
    if (Double.isInfinite(lower)) {
      return Math.abs(upper);
    }
    return Double.isInfinite(upper) ? Math.abs(lower) : (upper - lower) / 2;
  }

  /**
   * Probability that the true value lies inside, given the measured one and nothing else.
   *
   * @param degreesOfFreedom Student's t instead of the normal distribution when finite
   * @see "JCGM 106:2012, 7.3 and 7.4"
   */
  public double conformityProbability(
      double value, double standardUncertainty, double degreesOfFreedom) {
    if (standardUncertainty == 0) {
      return hold(value, 0) ? 1 : 0;
    }
    double below = below(upper, value, standardUncertainty, degreesOfFreedom);
    return below - below(lower, value, standardUncertainty, degreesOfFreedom);
  }

  private static double below(double limit, double value, double u, double degreesOfFreedom) {
    if (Double.isInfinite(limit)) {
      return limit > 0 ? 1 : 0;
    }
    return Student.probability(degreesOfFreedom, (limit - value) / u);
  }
}
