package loopwright.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DecisionRuleTest {
  private static final Limits BAND = new Limits(190, 210);

  private static Budget budget(double value, double u) {
    return new Budget(
        "ISF",
        "mV/mil",
        value,
        List.of(new BudgetLine("all", "", "normal", u, 1, Double.POSITIVE_INFINITY)));
  }

  /** Guard 1.96 · 1.5 = 2.94; own computation. */
  @ParameterizedTest
  @CsvSource({
    "200,    conforms,         conforms",
    "207.05, conforms,         conforms",
    "207.07, conforms,         'conforms, not proved'",
    "210,    conforms,         'conforms, not proved'",
    "210.01, does not conform, 'does not conform, not proved'",
    "212.93, does not conform, 'does not conform, not proved'",
    "212.95, does not conform, does not conform",
    "192.93, conforms,         'conforms, not proved'",
    "187.05, does not conform, does not conform",
  })
  void wordsOfTheRules(double value, String simple, String guarded) {
    assertThat(DecisionRule.simple().decide(budget(value, 1.5), BAND).label()).isEqualTo(simple);
    assertThat(DecisionRule.guarded().decide(budget(value, 1.5), BAND).label()).isEqualTo(guarded);
  }

  /** Own computation: Φ((210 − y)/1.5) − Φ((190 − y)/1.5). */
  @ParameterizedTest
  @CsvSource({"208, 0.9088", "209.5, 0.6306", "210, 0.5000", "211, 0.2525"})
  void probabilityNearALimit(double value, double probability) {
    Statement statement = new Statement(budget(value, 1.5), BAND, DecisionRule.simple());
    assertThat(statement.conformityProbability()).isCloseTo(probability, within(1e-4));
  }

  /** 208 is false with 9.1 %. */
  @ParameterizedTest
  @CsvSource({
    "208, 0.10, conforms",
    "208, 0.05, 'conforms, not proved'",
    "211, 0.30, does not conform",
    "211, 0.20, 'does not conform, not proved'",
  })
  void aRiskLimit(double value, double limit, String word) {
    assertThat(DecisionRule.riskLimit(limit).decide(budget(value, 1.5), BAND).label())
        .isEqualTo(word);
  }

  /** ILAC-G8:09/2019, table 1: w = U of k = 1.96 leaves 2.5 % at the acceptance limit. */
  @Test
  void guardByULeavesTwoAndAHalfPercent() {
    Budget atGuard = budget(210 - 1.959963984540054 * 1.5, 1.5);
    Statement statement = new Statement(atGuard, Limits.atMost(210), DecisionRule.guarded());
    assertThat(statement.decision()).isEqualTo(Decision.CONFORMS);
    assertThat(statement.conformityProbability()).isCloseTo(0.975, within(1e-9));
  }

  @Test
  void noUncertaintyNoDoubt() {
    assertThat(new Statement(budget(210, 0), BAND, DecisionRule.guarded()).decision())
        .isEqualTo(Decision.CONFORMS);
    assertThat(new Statement(budget(210, 0), BAND, DecisionRule.guarded()).conformityProbability())
        .isEqualTo(1);
    assertThat(new Statement(budget(211, 0), BAND, DecisionRule.guarded()).conformityProbability())
        .isZero();
  }

  @Property
  void widerUncertaintyNeverProvesMore(
      @ForAll @DoubleRange(min = 180, max = 220) double value,
      @ForAll @DoubleRange(min = 0.01, max = 5) double u,
      @ForAll @DoubleRange(min = 1, max = 3) double wider) {
    for (DecisionRule rule : List.of(DecisionRule.guarded(), DecisionRule.riskLimit(0.025))) {
      Decision sure = rule.decide(budget(value, u), BAND);
      Decision lessSure = rule.decide(budget(value, u * wider), BAND);
      if (sure == Decision.CONFORMS_NOT_PROVED) {
        assertThat(lessSure).isEqualTo(Decision.CONFORMS_NOT_PROVED);
      }
      assertThat(lessSure == Decision.DOES_NOT_CONFORM && sure != lessSure).isFalse();
    }
  }

  @Test
  void whatIsNoRuleOrTolerance() {
    assertThatThrownBy(() -> DecisionRule.riskLimit(0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> DecisionRule.riskLimit(0.6))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Limits(2, 1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> ErrorSource.known("x", Quantity.GAP, Spread.EACH_READING, -1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> ErrorSource.known("x", Quantity.GAP, Spread.EACH_READING, Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
