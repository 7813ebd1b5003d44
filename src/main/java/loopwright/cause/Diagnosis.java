package loopwright.cause;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;

/**
 * What the numbers say.
 *
 * @param situation that was weighed
 * @param causes likeliest first
 * @param lengthProbabilities of each length given, in its order: that this total is fitted,
 *     whatever else is wrong
 * @param impliedLength if it is the length
 * @param gapMicrometres the real gap over all causes, mean
 * @param gapUncertainty standard, µm
 * @param measurements by falling expected information
 * @param evidence density of what was seen over all causes, per V and per relative sensitivity
 */
public record Diagnosis(
    Situation situation,
    List<RankedCause> causes,
    Map<BigDecimal, Double> lengthProbabilities,
    ImpliedLength impliedLength,
    double gapMicrometres,
    double gapUncertainty,
    List<Suggestion> measurements,
    double evidence) {
  /** Stands beside every answer. */
  public static final String LIVE_PROTECTION =
      "A probability is no permission: work on a live protection channel can trip the machine or"
          + " leave it unprotected. Permit, bypass and restoration follow site procedure.";

  /**
   * @param measurement to take
   * @param bits of information expected from it
   */
  public record Suggestion(NextMeasurement measurement, double bits) {}

  public Diagnosis {
    causes = List.copyOf(causes);
    measurements = List.copyOf(measurements);
  }

  /** The likeliest cause. */
  public RankedCause first() {
    return causes.get(0);
  }

  /** The measurement that would tell most. */
  public Suggestion next() {
    return measurements.get(0);
  }

  /** How a cause would make such numbers, in words. */
  public String reason(RankedCause cause) {
    return Explanation.reason(situation, cause);
  }

  /** The same with what it would show beside what was measured. */
  public String explain(RankedCause cause) {
    return Explanation.of(situation, cause);
  }

  /** The order in which a fault is put right where the length may be wrong, in sentences. */
  public List<String> advice() {
    double length = 1 - probability(Cause.HEALTHY) - probability(Cause.GAP_MOVED);
    return length < 0.5 || measurements.isEmpty()
        ? List.of()
        : List.of(
            "Order: prove the length, clean and dry the connector, then change parts. Don't move the"
                + " probe before that.",
            "After any exchange the loop needs a new curve.");
  }

  /** What must be known before anybody acts on it, in sentences. */
  public List<String> warnings() {
    return Cautions.of(this);
  }

  /** On what it rests, in sentences with the mark of each number's source. */
  public List<String> basis() {
    return Basis.of(situation);
  }

  public double probability(Cause cause) {
    return causes.stream()
        .filter(ranked -> ranked.cause() == cause)
        .mapToDouble(RankedCause::probability)
        .sum();
  }
}
