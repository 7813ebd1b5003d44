package loopwright.cause;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.Map;
import loopwright.problem.Refused;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Weights before measuring, and what they do to probabilities. */
class WeightsTest {
  private static final Observation SEEN = Cases.seen(-7.9, 177);

  private static Weights with(Cause cause, String weight) {
    Map<Cause, BigDecimal> changed = new EnumMap<>(Weights.builtIn().byCause());
    changed.put(cause, new BigDecimal(weight));
    return new Weights(changed, "set here");
  }

  private static Diagnosis find(Weights weights) {
    return CauseFinder.find(
        new Situation(
            Cases.FIVE,
            Cases.LENGTHS,
            Cases.line(Cases.OWN),
            SEEN,
            LengthLaw.unproved(),
            weights.at(SEEN.at())));
  }

  /** Bayes: the odds of two causes are the ratio of their weights times that of likelihoods. */
  @Test
  void oddsChangeByTheRatioOfTheWeights() {
    Diagnosis before = find(Weights.builtIn());
    Diagnosis after = find(with(Cause.CONNECTOR, "0.28"));
    double ratio = 0.28 / 0.035;
    for (Cause other : new Cause[] {Cause.OVER_LENGTH, Cause.METER_ERROR, Cause.DRIVER_FAULT}) {
      double then = before.probability(Cause.CONNECTOR) / before.probability(other);
      double now = after.probability(Cause.CONNECTOR) / after.probability(other);
      assertThat(now / then).as(other.label()).isCloseTo(ratio, within(1e-9));
    }
    double p = before.probability(Cause.CONNECTOR);
    assertThat(after.probability(Cause.CONNECTOR))
        .isCloseTo(ratio * p / (ratio * p + 1 - p), within(1e-9));
    assertThat(after.basis().toString()).contains("before measuring (set here): ");
  }

  @Test
  void onlyRatiosCount() {
    Map<Cause, BigDecimal> tenfold = new EnumMap<>(Weights.builtIn().byCause());
    tenfold.replaceAll((cause, weight) -> weight.multiply(BigDecimal.TEN));
    Diagnosis usual = find(Weights.builtIn());
    Diagnosis scaled = find(new Weights(tenfold, ""));
    for (Cause cause : Cause.values()) {
      assertThat(scaled.probability(cause)).isCloseTo(usual.probability(cause), within(1e-12));
    }
  }

  @Test
  void aCauseOfNoWeightIsRuledOutAndNothingLeftIsSaid() {
    assertThat(find(with(Cause.OVER_LENGTH, "0")).probability(Cause.OVER_LENGTH)).isZero();
    Map<Cause, BigDecimal> onlyMonitor = new EnumMap<>(Cause.class);
    for (Cause cause : Cause.values()) {
      onlyMonitor.put(cause, cause == Cause.MONITOR_SCALE ? BigDecimal.ONE : BigDecimal.ZERO);
    }
    Weights weights = new Weights(onlyMonitor, "");
    assertThat(weights.isEmptyAtTheDriver()).isTrue();
    assertThatThrownBy(() -> find(weights))
        .isInstanceOfSatisfying(
            Refused.class,
            refused -> assertThat(refused.problem()).isEqualTo(CauseProblem.RULED_OUT));
  }

  /** As they were before weights could be set; own choice of the trade's usual ones. */
  @Test
  void loadingAndTheMonitorDependOnThePlace() {
    assertThat(Priors.usual(TappingPoint.DRIVER).of(Cause.LOADING)).isEqualTo(0.01);
    assertThat(Priors.usual(TappingPoint.BARRIER).of(Cause.LOADING))
        .isCloseTo(0.025, within(1e-15));
    assertThat(Priors.usual(TappingPoint.DRIVER).of(Cause.MONITOR_SCALE)).isZero();
    assertThat(Priors.usual(TappingPoint.MONITOR).of(Cause.MONITOR_SCALE)).isEqualTo(0.03);
  }

  @ParameterizedTest
  @ValueSource(strings = {"-0.1", "x", "", "NaN", "1e9", "1000.5", "0.0000001", "1,5,3"})
  void whatIsNoWeightIsRefusedByName(String text) {
    assertThatThrownBy(() -> Weights.read(Cause.CONNECTOR, text))
        .isInstanceOf(Refused.class)
        .hasMessageContaining("Weight of wet or dirty connector");
  }

  @Test
  void weightsAreReadAsTyped() {
    assertThat(Weights.read(Cause.CONNECTOR, " 0,05 ")).isEqualByComparingTo("0.05");
    assertThat(Weights.read(Cause.CONNECTOR, "0")).isZero();
    assertThat(Weights.read(Cause.CONNECTOR, "1000.000")).isEqualByComparingTo("1000");
  }
}
