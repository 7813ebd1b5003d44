package loopwright.uncertainty;

/**
 * A result with its budget, its tolerance and the decision about it.
 *
 * @param budget of the result
 * @param limits exact, from the profile
 * @param rule that decides
 */
public record Statement(Budget budget, Limits limits, DecisionRule rule) {
  /** Own choice: equipment that uses up more of a tolerance than this share can't prove it. */
  static final double MOST_OF_TOLERANCE = 0.5;

  public Decision decision() {
    return rule.decide(budget, limits);
  }

  /** Probability that the true value lies inside the limits, 0 to 1. */
  public double conformityProbability() {
    return limits.conformityProbability(
        budget.estimate(), budget.standardUncertainty(), budget.wholeDegreesOfFreedom());
  }

  /** U as a share of the tolerance: 0.64 for ±3.2 % in a tolerance of ±5 %. */
  public double shareOfTolerance() {
    return budget.expandedUncertainty() / limits.tolerance();
  }

  /** Does the uncertainty leave at least half of the tolerance to the loop? */
  public boolean equipmentCanProve() {
    return shareOfTolerance() <= MOST_OF_TOLERANCE;
  }
}
