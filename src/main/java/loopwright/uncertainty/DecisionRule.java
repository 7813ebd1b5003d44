package loopwright.uncertainty;

import java.util.Locale;

/**
 * How a decision is made in the face of uncertainty.
 *
 * <ul>
 *   <li>Simple: inside the limits conforms, outside does not; a false acceptance may be as likely
 *       as 50 %.
 *   <li>Guarded: the limits are drawn in by U; between guard and limit the value conforms, not
 *       proved, and as far outside it does not conform, not proved.
 *   <li>Risk limit: proved when the probability of the opposite is at most the limit.
 * </ul>
 *
 * @param kind which of them
 * @param riskLimit of a false acceptance, above 0 and at most 0.5; of a rule without one, 0.5
 * @see "JCGM 106:2012, 8; ILAC-G8:09/2019, 4.2"
 */
public record DecisionRule(Kind kind, double riskLimit) {

  /** The three rules. */
  public enum Kind {
    SIMPLE,
    GUARDED,
    RISK_LIMIT
  }

  /** Refuses a risk outside its bounds. */
  public DecisionRule {
    if (!(riskLimit > 0 && riskLimit <= 0.5)) {
      throw new IllegalArgumentException("A risk limit lies above 0 and not above 0.5.");
    }
  }

  public static DecisionRule simple() {
    return new DecisionRule(Kind.SIMPLE, 0.5);
  }

  public static DecisionRule guarded() {
    return new DecisionRule(Kind.GUARDED, 0.5);
  }

  public static DecisionRule riskLimit(double falseAcceptance) {
    return new DecisionRule(Kind.RISK_LIMIT, falseAcceptance);
  }

  /** Decides about a result. */
  public Decision decide(Budget budget, Limits limits) {
    boolean inside = limits.hold(budget.estimate(), 0);
    if (isProved(budget, limits, inside)) {
      return inside ? Decision.CONFORMS : Decision.DOES_NOT_CONFORM;
    }
    return inside ? Decision.CONFORMS_NOT_PROVED : Decision.DOES_NOT_CONFORM_NOT_PROVED;
  }

  private boolean isProved(Budget budget, Limits limits, boolean inside) {
    return switch (kind) {
      case SIMPLE -> true;
      case GUARDED -> {
        double guard = budget.expandedUncertainty();
        yield inside
            ? limits.hold(budget.estimate(), guard)
            : !limits.hold(budget.estimate(), -guard);
      }
      case RISK_LIMIT -> {
        double conforming =
            limits.conformityProbability(
                budget.estimate(), budget.standardUncertainty(), budget.wholeDegreesOfFreedom());
        yield (inside ? 1 - conforming : conforming) <= riskLimit;
      }
    };
  }

  /** {@code simple}, {@code guarded}, {@code risk limit}. */
  public String label() {
    return kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
