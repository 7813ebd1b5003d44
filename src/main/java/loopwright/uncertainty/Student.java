package loopwright.uncertainty;

import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/** Student's t, which is the normal distribution for infinitely many degrees of freedom. */
final class Student {
  private static final ContinuousDistribution NORMAL = NormalDistribution.of(0, 1);

  private Student() {}

  /** The t that holds a two-sided probability between −t and t. */
  static double factor(double degreesOfFreedom, double probability) {
    if (!(probability > 0 && probability < 1)) {
      throw new IllegalArgumentException("A coverage probability lies between 0 and 1.");
    }
    return of(degreesOfFreedom).inverseSurvivalProbability((1 - probability) / 2);
  }

  /** Probability of at most t. */
  static double probability(double degreesOfFreedom, double t) {
    return of(degreesOfFreedom).cumulativeProbability(t);
  }

  private static ContinuousDistribution of(double degreesOfFreedom) {
    return Double.isInfinite(degreesOfFreedom) ? NORMAL : TDistribution.of(degreesOfFreedom);
  }
}
