package loopwright.cause;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.problem.Refused;

/**
 * Weighs every hypothesis against what was measured. Probability of a variant = its weight before
 * measuring times its likelihood, over the sum of all. Exponent and slope of the length law, the
 * real gap and the true voltage are integrated out by fixed sums, so that the same numbers always
 * give the same answer and nearly the same numbers nearly the same one.
 */
public final class CauseFinder {
  private final Situation situation;
  private final Weighing weighing;

  private CauseFinder(Situation situation) {
    this.situation = situation;
    this.weighing = new Weighing(situation);
  }

  /**
   * Ranks the causes.
   *
   * @throws Refused where only causes of zero weight could explain what was seen
   */
  public static Diagnosis find(Situation situation) {
    return new CauseFinder(situation).diagnosis();
  }

  private Diagnosis diagnosis() {
    List<Weighed> raw = raw();
    double evidence = probability(raw);
    if (!(evidence > 0)) {
      throw new Refused(
          CauseProblem.RULED_OUT,
          Told.volts(situation.seen().volts()),
          Told.sensitivity(situation.seen().sensitivity()));
    }
    List<Weighed> weighed =
        raw.stream().map(each -> each.withProbability(each.probability() / evidence)).toList();
    Tally all = new Tally();
    weighed.forEach(each -> all.add(each.tally(), each.probability() / each.tally().weight()));
    return new Diagnosis(
        situation,
        ranked(weighed),
        lengths(weighed),
        ImpliedLength.of(weighing),
        all.meanGap(),
        all.gapDeviation(),
        suggestions(weighed),
        evidence);
  }

  private List<Weighed> raw() {
    List<Weighed> raw = new ArrayList<>();
    for (Hypothesis hypothesis : HypothesisBook.all()) {
      double prior = situation.priors().of(hypothesis.cause());
      if (prior == 0) {
        continue;
      }
      for (Variant variant : hypothesis.variants(situation)) {
        Tally tally = new Tally();
        variant.likelihood().addTo(tally, weighing);
        double weight = prior * variant.share() * tally.weight();
        if (weight > 0) {
          raw.add(new Weighed(hypothesis.cause(), variant, tally, weight));
        }
      }
    }
    return raw;
  }

  private List<RankedCause> ranked(List<Weighed> weighed) {
    return Arrays.stream(Cause.values())
        .map(cause -> weighed.stream().filter(each -> each.cause() == cause).toList())
        .filter(variants -> !variants.isEmpty())
        .map(this::rank)
        .sorted(Comparator.comparingDouble(RankedCause::probability).reversed())
        .toList();
  }

  private RankedCause rank(List<Weighed> variants) {
    Optional<BigDecimal> length = likeliestLength(variants);
    List<Weighed> ofLength =
        variants.stream().filter(each -> each.variant().fittedLength().equals(length)).toList();
    boolean regapped =
        2 * probability(ofLength.stream().filter(each -> each.variant().regapped()).toList())
            > probability(ofLength);
    Weighed likeliest =
        ofLength.stream()
            .filter(each -> each.variant().regapped() == regapped)
            .max(Comparator.comparingDouble(Weighed::probability))
            .orElseThrow();
    Likelihood.Typical typical =
        likeliest.variant().likelihood().typical(situation, likeliest.tally());
    return new RankedCause(
        likeliest.cause(),
        probability(variants),
        length,
        regapped,
        typical.volts(),
        typical.sensitivity(),
        likeliest.tally().meanGap(),
        likeliest.tally().meanFactor());
  }

  private static Optional<BigDecimal> likeliestLength(List<Weighed> variants) {
    Map<Optional<BigDecimal>, Double> byLength = new LinkedHashMap<>();
    variants.forEach(
        each -> byLength.merge(each.variant().fittedLength(), each.probability(), Double::sum));
    return byLength.entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow().getKey();
  }

  private static double probability(List<Weighed> weighed) {
    return weighed.stream().mapToDouble(Weighed::probability).sum();
  }

  private Map<BigDecimal, Double> lengths(List<Weighed> weighed) {
    Map<BigDecimal, Double> probabilities = new LinkedHashMap<>();
    for (BigDecimal length : situation.lengths()) {
      probabilities.put(
          length,
          probability(
              weighed.stream()
                  .filter(
                      each ->
                          each.variant().fittedLength().stream()
                              .anyMatch(fitted -> fitted.compareTo(length) == 0))
                  .toList()));
    }
    return probabilities;
  }

  private List<Diagnosis.Suggestion> suggestions(List<Weighed> weighed) {
    return Arrays.stream(NextMeasurement.values())
        .map(
            measurement ->
                new Diagnosis.Suggestion(measurement, measurement.information(weighed, situation)))
        .sorted(Comparator.comparingDouble(Diagnosis.Suggestion::bits).reversed())
        .toList();
  }
}
