package loopwright.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Arrays;
import java.util.List;
import loopwright.curve.CurveResult;
import loopwright.curve.ShiftRule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CurveUncertaintyTest {
  private static final double K = 1.959963984540054;
  private static final double SLOPE = 200 / 25.4;
  private static final EndToEnd ASF = new EndToEnd("average scale factor");

  /**
   * U(ISF) with k = 2 on the ideal line, own computation by hand: √2 · √((u_V/Δg)² + (S u_g/Δg)²).
   */
  @ParameterizedTest
  @CsvSource({"0.010, 2.54, 6.32", "0.005, 1.27, 3.16", "0.002, 0.508, 1.26"})
  void incrementOfIndependentEnds(double volts, double micrometres, double millivoltsPerMil) {
    CurveUncertainty known = ideal(Sets.equipment(volts, micrometres, 0), DecisionRule.simple());
    known.worse().isf().stream()
        .map(Statement::budget)
        .forEach(
            isf ->
                assertThat(2 * isf.standardUncertainty() * 25.4)
                    .isCloseTo(millivoltsPerMil, within(0.01)));
    assertThat(known.worse().isf()).hasSize(8);
  }

  @Test
  void scaleErrorAloneIsTheSameShareOfEverySlope() {
    double share = 0.004;
    RunUncertainty run =
        CurveUncertainty.of(
                Sets.inch(Sets.GOOD), Sets.equipment(0, 0, share), DecisionRule.simple())
            .worse();
    run.isf().stream().map(Statement::budget).forEach(isf -> isShareOfItself(isf, share));
    isShareOfItself(run.asf().budget(), share);
    isShareOfItself(run.leastSquares(), share);
  }

  private static void isShareOfItself(Budget slope, double share) {
    assertThat(slope.expandedUncertainty())
        .isCloseTo(K * share * slope.estimate(), withinPercentage(1e-9));
  }

  @Test
  void moreReadingsDontHelpAgainstAScaleError() {
    List<ErrorSource> scale = Sets.equipment(1e-4, 0.01, 0.005);
    Budget few = Budget.of(ASF, Sets.spread(9, Sets::ideal), scale);
    Budget many = Budget.of(ASF, Sets.spread(81, Sets::ideal), scale);
    assertThat(many.expandedUncertainty())
        .isCloseTo(few.expandedUncertainty(), withinPercentage(1e-9))
        .isCloseTo(K * 0.005 * SLOPE, withinPercentage(0.01));
    Budget line = Budget.of(new LeastSquaresSlope(), Sets.spread(9, Sets::ideal), scale);
    Budget longLine = Budget.of(new LeastSquaresSlope(), Sets.spread(81, Sets::ideal), scale);
    assertThat(longLine.expandedUncertainty())
        .isCloseTo(line.expandedUncertainty(), withinPercentage(0.01));
  }

  /** The same scale error with its correlation dropped gives other numbers, and they shrink. */
  @Test
  void correlationMatters() {
    Readings few = Sets.spread(9, Sets::ideal);
    Readings many = Sets.spread(81, Sets::ideal);
    double share = 0.005;
    assertThat(uncorrelated(ASF, few, share)).isGreaterThan(1.1 * share * SLOPE);
    double isf = uncorrelated(ASF, new Readings(last(few.gaps()), last(few.volts())), share);
    assertThat(isf).isGreaterThan(10 * share * SLOPE);
    double slopeOfFew = uncorrelated(new LeastSquaresSlope(), few, share);
    assertThat(uncorrelated(new LeastSquaresSlope(), many, share)).isLessThan(0.5 * slopeOfFew);
  }

  private static double uncorrelated(Measurand measurand, Readings readings, double share) {
    double[] byGap = measurand.gradient(readings).byGap();
    double variance = 0;
    for (int i = 0; i < byGap.length; i++) {
      variance += Math.pow(byGap[i] * share * readings.gaps()[i], 2);
    }
    return Math.sqrt(variance);
  }

  private static double[] last(double[] values) {
    return new double[] {values[values.length - 2], values[values.length - 1]};
  }

  @Test
  void aCommonZeroErrorChangesNothingHere() {
    List<ErrorSource> zero =
        List.of(
            ErrorSource.known("gap zero", Quantity.GAP, Spread.SAME_OFFSET, 20),
            ErrorSource.known("voltage zero", Quantity.VOLTS, Spread.SAME_OFFSET, 0.1));
    RunUncertainty run =
        CurveUncertainty.of(Sets.inch(Sets.GOOD), zero, DecisionRule.guarded()).worse();
    assertThat(run.asf().budget().standardUncertainty()).isCloseTo(0, within(1e-9));
    assertThat(run.maxDsl().budget().standardUncertainty()).isCloseTo(0, within(1e-9));
    assertThat(run.leastSquares().standardUncertainty()).isCloseTo(0, within(1e-9));
  }

  /** Derivatives against differences, for every result. */
  @Test
  void derivativesAreThoseOfTheResults() {
    Readings readings = judged(Sets.LONG);
    for (Measurand measurand :
        List.of(
            ASF,
            new LeastSquaresSlope(),
            new LargestDeviation(SLOPE, ShiftRule.MINIMAX),
            new LargestDeviation(SLOPE, ShiftRule.MEAN))) {
      Measurand.Gradient gradient = measurand.gradient(readings);
      for (int i = 0; i < readings.gaps().length; i++) {
        assertThat(gradient.byGap()[i])
            .as("%s by gap %d", measurand, i)
            .isCloseTo(difference(measurand, readings, Quantity.GAP, i, 1e-3), within(1e-5));
        assertThat(gradient.byVolts()[i])
            .as("%s by volts %d", measurand, i)
            .isCloseTo(difference(measurand, readings, Quantity.VOLTS, i, 1e-6), within(1e-3));
      }
    }
    Measurand dynamic = new DynamicSensitivity();
    Readings one = new Readings(new double[] {100}, new double[] {0.787});
    assertThat(dynamic.gradient(one).byGap()[0])
        .isCloseTo(difference(dynamic, one, Quantity.GAP, 0, 1e-3), within(1e-8));
    assertThat(dynamic.gradient(one).byVolts()[0])
        .isCloseTo(difference(dynamic, one, Quantity.VOLTS, 0, 1e-6), within(1e-6));
  }

  private static double difference(
      Measurand measurand, Readings readings, Quantity quantity, int at, double step) {
    return (measurand.value(moved(readings, quantity, at, step))
            - measurand.value(moved(readings, quantity, at, -step)))
        / (2 * step);
  }

  private static Readings moved(Readings readings, Quantity quantity, int at, double step) {
    Readings moved = new Readings(readings.gaps().clone(), readings.volts().clone());
    moved.of(quantity)[at] += step;
    return moved;
  }

  private static Readings judged(double[] volts) {
    return Readings.of(Sets.inch(volts).worse().points());
  }

  @Test
  void largestDeviationOfAnIdealLineIsNotCertain() {
    RunUncertainty run = ideal(Sets.equipment(0.01, 2.54, 0), DecisionRule.guarded()).worse();
    double one = Math.hypot(2.54, 10 / SLOPE);
    assertThat(run.maxDsl().budget().standardUncertainty())
        .isCloseTo(one / Math.sqrt(2), withinPercentage(1e-6));
    assertThat(run.sharedExtremes()).isEqualTo(9);
    assertThat(
            String.join(
                " ", ideal(Sets.equipment(0.01, 2.54, 0), DecisionRule.guarded()).remarks()))
        .contains("linearisation");
  }

  @Test
  void equipmentThatCantProveTheToleranceIsTold() {
    List<String> remarks =
        ideal(Sets.equipment(0.01, 2.54, 0.0005), DecisionRule.guarded()).remarks();
    assertThat(remarks.get(0))
        .contains("cannot prove this tolerance")
        .contains("U(ISF) is 3.1 % of nominal against ±5.0 %")
        .contains("Biggest contributor: gap reading");
    assertThat(ideal(Sets.equipment(0.002, 0.5, 0.0005), DecisionRule.guarded()).remarks())
        .noneMatch(remark -> remark.contains("cannot prove"));
    assertThat(ideal(Sets.equipment(0.1, 2.54, 0.0005), DecisionRule.guarded()).remarks().get(0))
        .contains("no ISF would be proved, whatever its value")
        .contains("Biggest contributor: voltage reading");
  }

  @Test
  void resultsStayAsAnalysed() {
    CurveResult result = Sets.inch(Sets.GOOD);
    RunUncertainty run =
        CurveUncertainty.of(result, Sets.equipment(0.01, 2.54, 0.001), DecisionRule.guarded())
            .worse();
    assertThat(run.asf().budget().estimate()).isEqualTo(result.asf());
    assertThat(run.maxDsl().budget().estimate()).isCloseTo(result.maxDsl(), within(1e-9));
    assertThat(run.leastSquares().estimate()).isEqualTo(result.leastSquaresSlope());
  }

  /** 100 µm pk-pk at 7.87 mV/µm; 0.5 % of the output and 1 % of the displacement, by hand. */
  @Test
  void dynamicSensitivity() {
    Budget budget =
        DynamicUncertainty.of(
            100,
            0.787,
            List.of(
                ErrorSource.known("meter", Quantity.VOLTS, Spread.SAME_SHARE, 0.005),
                ErrorSource.known("vibration table", Quantity.GAP, Spread.SAME_SHARE, 0.01)));
    assertThat(budget.estimate()).isCloseTo(7.87, withinPercentage(1e-9));
    assertThat(budget.standardUncertainty())
        .isCloseTo(7.87 * Math.sqrt(0.000125), withinPercentage(1e-9));
    assertThat(budget.biggest().orElseThrow().name()).isEqualTo("vibration table");
  }

  private static CurveUncertainty ideal(List<ErrorSource> sources, DecisionRule rule) {
    double[] volts = new double[9];
    Arrays.setAll(volts, i -> -2.0 * (i + 1));
    return CurveUncertainty.of(Sets.inch(volts), sources, rule);
  }
}
