package loopwright.register;

import java.math.BigDecimal;
import loopwright.uncertainty.DecisionRule;
import loopwright.units.Numbers;

/**
 * How a profile's version decides beside its limits.
 *
 * @param rule in the face of uncertainty
 * @param reviewAsked whether a second person reviews what was signed
 */
public record ProfileTerms(DecisionRule rule, boolean reviewAsked) {
  /** Inside the limits conforms, and nobody reviews. */
  public static final ProfileTerms SIMPLE = new ProfileTerms(DecisionRule.simple(), false);

  /** The rule in a sentence. */
  public String ruleInWords() {
    return switch (rule.kind()) {
      case SIMPLE -> "simple acceptance: inside the limits conforms";
      case GUARDED -> "guarded: the limits are drawn in by the expanded uncertainty U";
      case RISK_LIMIT ->
          "risk limit: proved when the probability of a false decision is at most "
              + percent(rule.riskLimit())
              + " %";
    };
  }

  static String percent(double share) {
    return Numbers.plain(BigDecimal.valueOf(share).movePointRight(2));
  }
}
