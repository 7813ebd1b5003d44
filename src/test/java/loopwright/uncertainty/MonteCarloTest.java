package loopwright.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import loopwright.curve.CurveResult;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The budget against draws by chance (JCGM 101:2008, 8); seeded, so always the same. */
class MonteCarloTest {
  private static final int MANY = 400_000;
  private static final int TRIALS = 50_000;
  private static final long SEED = 20_261_125;

  private static List<MonteCarlo> check(double[] volts, List<ErrorSource> sources) {
    return check(volts, sources, TRIALS);
  }

  private static List<MonteCarlo> check(double[] volts, List<ErrorSource> sources, int trials) {
    CurveResult result = Sets.inch(volts);
    return CurveUncertainty.of(result, sources, DecisionRule.guarded())
        .worse()
        .monteCarlo(result, trials, SEED);
  }

  @Test
  void budgetsAreConfirmedWhereTheExtremesStandClear() {
    List<MonteCarlo> checks = check(Sets.LONG, Sets.equipment(0.01, 2.54, 0.003), MANY);
    assertThat(checks).hasSize(3);
    for (MonteCarlo check : checks) {
      assertThat(check.agrees()).as(check.toString()).isTrue();
      assertThat(check.standardDeviation())
          .isCloseTo(check.budget().standardUncertainty(), withinPercentage(1));
    }
  }

  @Test
  void aBudgetWithoutItsCorrelationIsNotConfirmed() {
    MonteCarlo asf = check(Sets.LONG, Sets.equipment(0.0005, 0.1, 0.002)).get(0);
    assertThat(asf.agrees()).isTrue();
    double dropped = asf.standardDeviation() / Math.hypot(254, 2286) * (2286 - 254);
    assertThat(asf.budget().standardUncertainty()).isGreaterThan(1.1 * dropped);
  }

  /** On an ideal line noise alone makes the largest deviation: the linearisation can't see that. */
  @Test
  void theKinkIsSeenByChanceOnly() {
    double[] ideal = {-2, -4, -6, -8, -10, -12, -14, -16, -18};
    MonteCarlo deviation = check(ideal, Sets.equipment(0.01, 2.54, 0)).get(2);
    assertThat(deviation.agrees()).isFalse();
    assertThat(deviation.low()).isGreaterThan(0);
    assertThat(deviation.high()).isGreaterThan(deviation.budget().expandedUncertainty());
  }

  @ParameterizedTest
  @EnumSource
  void eachDistributionHasUnitSpread(Distribution distribution) {
    ErrorSource source =
        new ErrorSource(
            "error",
            Quantity.VOLTS,
            Spread.EACH_READING,
            distribution,
            distribution.standardUncertainty(0.02),
            Double.POSITIVE_INFINITY);
    MonteCarlo asf = check(Sets.LONG, List.of(source)).get(0);
    assertThat(asf.standardDeviation())
        .isCloseTo(asf.budget().standardUncertainty(), withinPercentage(1));
  }

  /** A scaled Student t with ν degrees of freedom has the variance u² ν/(ν − 2). */
  @Test
  void fewDegreesOfFreedomSpreadWider() {
    ErrorSource few =
        new ErrorSource(
            "repeatability", Quantity.GAP, Spread.SAME_SHARE, Distribution.NORMAL, 0.003, 6);
    MonteCarlo asf = check(Sets.LONG, List.of(few)).get(0);
    assertThat(asf.budget().coverageFactor()).isCloseTo(2.4469, withinPercentage(0.01));
    assertThat(asf.standardDeviation())
        .isCloseTo(asf.budget().standardUncertainty() * Math.sqrt(6.0 / 4), withinPercentage(2));
    assertThat(asf.high() - asf.low())
        .isCloseTo(2 * asf.budget().expandedUncertainty(), withinPercentage(2));
  }

  @Test
  void sameSeedSameAnswer() {
    List<ErrorSource> sources = Sets.equipment(0.01, 2.54, 0.003);
    assertThat(check(Sets.GOOD, sources)).isEqualTo(check(Sets.GOOD, sources));
    CurveResult result = Sets.inch(Sets.GOOD);
    RunUncertainty run = CurveUncertainty.of(result, sources, DecisionRule.simple()).worse();
    assertThatThrownBy(() -> run.monteCarlo(result, 10, SEED))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
