package loopwright.curve;

import static loopwright.curve.Curves.API;
import static loopwright.curve.Curves.ideal;
import static loopwright.curve.Curves.inchGrid;
import static loopwright.curve.Curves.inchRun;
import static loopwright.curve.Curves.metric;
import static loopwright.curve.Curves.steps;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import loopwright.problem.Refused;
import loopwright.testing.Reference;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.junit.jupiter.api.Test;

class CurveAnalysisTest {

  private static List<Finding.Kind> kinds(CurveResult result) {
    return result.findings().stream().map(Finding::kind).toList();
  }

  /** The same definitions met outside the trade; source and data in the file's header. */
  @Test
  void deviationFromTheEndPointLineOfAPublishedPressureCalibration() {
    Reference kessel = Reference.read("kessel-2012-table-4.csv");
    double[] indication = kessel.column("x");
    double[] pressure = kessel.column("y");
    List<CurveReading> readings = new ArrayList<>();
    for (int i = 0; i < indication.length; i++) {
      readings.add(CurveReading.of(Run.UP, 1000 * indication[i], 0.0 - pressure[i]));
    }
    ToleranceProfile profile =
        Curves.profile(
            ScaleFactor.millivoltsPerMicrometre("9.79911807937286"),
            ShiftRule.MINIMAX,
            List.of(Grid.of(Unit.MICROMETRE, "0", "2040", "204")));
    CurveResult result = CurveAnalysis.of(new Curve(readings), profile);
    assertThat(result.asf()).isCloseTo(9.799118079372857, within(1e-12));
    // published largest deviation 0.00392 of the line through the end points; the minimax line
    // lies in the middle of it, as no deviation has the other sign
    double inPressure = result.maxDsl() * result.profile().slope() / 1000;
    assertThat(2 * inPressure).isCloseTo(0.0039196472, within(1e-9));
    assertThat(result.leastSquaresSlope()).isCloseTo(9.7993358364831, within(1e-10));
    assertThat(result.leastSquaresSlopeStandardError())
        .isCloseTo(0.000723830653310571, within(1e-13));
  }

  @Test
  void aUniformErrorOfTwoAndAHalfPercentIsTheMostThatTheLineTestLetsThrough() {
    double[] limit = steps(10, 90, 10);
    double[] volts = Arrays.stream(limit).map(g -> -0.205 * g).toArray();
    assertThat(CurveAnalysis.of(inchGrid(volts), API).verdict()).isEqualTo(Verdict.CONFORMS);
    double[] more = Arrays.stream(limit).map(g -> -0.20501 * g).toArray();
    assertThat(CurveAnalysis.of(inchGrid(more), API).dslVerdict())
        .isEqualTo(Verdict.DOES_NOT_CONFORM);
  }

  @Test
  void aStretchIsLinearWhenItPassesBothTestsByItself() {
    // 4 % too steep: every increment passes, but only five of them stay within 1 mil of a line
    CurveResult steep = CurveAnalysis.of(inchGrid(steps(-2.08, -18.72, -2.08)), API);
    GapRange range = steep.linearRange().orElseThrow();
    assertThat(range.lengthMicrometres()).isCloseTo(50 * 25.4, within(1e-6));
    // last increment out: the rest is linear, and guidance is its middle
    CurveResult short9 =
        CurveAnalysis.of(inchGrid(-2, -4, -6, -8, -10, -12, -14, -16, -17.88), API);
    assertThat(short9.linearRange()).contains(new GapRange(254, 2032));
    assertThat(short9.midRangeGapMicrometres()).isEqualTo(1143);
    assertThat(short9.midRangeVolts().getAsDouble()).isCloseTo(-9, within(1e-12));
  }

  @Test
  void withoutALinearRangeGuidanceIsTheMiddleOfTheProfile() {
    CurveResult result =
        CurveAnalysis.of(
            inchGrid(-1.65, -3.53, -5.37, -7.17, -8.92, -10.61, -12.23, -13.77, -15.24), API);
    assertThat(result.linearRange()).isEmpty();
    assertThat(result.midRangeGapMicrometres()).isEqualTo(1270);
    assertThat(result.midRangeVolts().getAsDouble()).isEqualTo(-8.92);
    assertThat(kinds(result))
        .containsExactly(
            Finding.Kind.ISF_OUT,
            Finding.Kind.DSL_OUT,
            Finding.Kind.TREND,
            Finding.Kind.NO_LINEAR_RANGE);
    assertThat(result.findings().get(2).sentence()).contains("falls", "more cable");
  }

  @Test
  void theInchGridIsKnownByItsGapsNotByTheUnitTyped() {
    CurveResult converted = CurveAnalysis.of(ideal(steps(254, 2286, 254)), API);
    assertThat(converted.grid().unit()).isEqualTo(Unit.MIL);
    assertThat(converted.verdict()).isEqualTo(Verdict.CONFORMS);
    assertThat(converted.points()).allMatch(CurvePoint::judged);
  }

  @Test
  void elevenReadingsShowTheEndsButOnlyNineAreJudged() {
    double[] gaps =
        DoubleStream.concat(DoubleStream.of(127), Arrays.stream(steps(254, 2540, 254))).toArray();
    double[] volts = Arrays.stream(gaps).map(g -> -g * 0.2 / 25.4).toArray();
    volts[0] = -0.9; // near the target the output flattens
    volts[10] = -19.2; // and at the far end
    CurveResult result = CurveAnalysis.of(metric(weave(gaps, volts)), API);
    assertThat(result.verdict()).isEqualTo(Verdict.CONFORMS);
    assertThat(result.points().stream().filter(CurvePoint::judged)).hasSize(9);
    assertThat(result.maxDsl()).isCloseTo(0, within(1e-9));
    assertThat(result.asf()).isCloseTo(API.slope(), within(1e-12));
    assertThat(result.linearRange()).contains(new GapRange(254, 2286));
    assertThat(kinds(result)).containsExactly(Finding.Kind.DRAWN_ONLY);
  }

  @Test
  void theLinearRangeMayReachPastTheProfile() {
    CurveResult result = CurveAnalysis.of(ideal(steps(250, 2750, 250)), API);
    assertThat(result.linearRange()).contains(new GapRange(250, 2750));
    assertThat(result.worse().judgedRange()).isEqualTo(new GapRange(250, 2250));
  }

  @Test
  void finerStepsAreDrawnNotJudged() {
    double[] gaps = steps(250, 2250, 125);
    double[] volts = Arrays.stream(gaps).map(g -> -g * 0.2 / 25.4).toArray();
    volts[1] -= 0.15; // one fine reading far off, between two increments
    CurveResult result = CurveAnalysis.of(metric(weave(gaps, volts)), API);
    assertThat(result.verdict()).isEqualTo(Verdict.CONFORMS);
    assertThat(result.worse().judgedIncrements()).hasSize(8);
    assertThat(result.points().get(1).judged()).isFalse();
    assertThat(API.isfConforms(result.points().get(1).isf().getAsDouble())).isFalse();
    assertThat(result.findings().get(0).sentence()).contains("8 readings", "8 between");
  }

  @Test
  void amongManyFineReadingsThoseOnTheGridAreJudged() {
    CurveResult result = CurveAnalysis.of(ideal(steps(100, 2600, 2.5)), API);
    assertThat(result.verdict()).isEqualTo(Verdict.CONFORMS);
    assertThat(result.points().stream().filter(CurvePoint::judged).map(CurvePoint::gapMicrometres))
        .containsExactly(250.0, 500.0, 750.0, 1000.0, 1250.0, 1500.0, 1750.0, 2000.0, 2250.0);
  }

  @Test
  void readingsTooCloseTogetherForAnyIncrementJudgeOnlyTheLine() {
    CurveResult result = CurveAnalysis.of(ideal(250, 300, 350), API);
    assertThat(result.isfVerdict()).isEqualTo(Verdict.NOT_JUDGED);
    assertThat(result.dslVerdict()).isEqualTo(Verdict.CONFORMS);
    assertThat(result.verdict()).isEqualTo(Verdict.DOES_NOT_CONFORM);
    assertThat(result.findings())
        .extracting(Finding::sentence)
        .noneMatch(sentence -> sentence.contains("wider"));
  }

  @Test
  void aCurveThatDoesNotCoverTheRangeCannotConform() {
    CurveResult result = CurveAnalysis.of(ideal(steps(500, 2000, 250)), API);
    assertThat(result.verdict()).isEqualTo(Verdict.DOES_NOT_CONFORM);
    assertThat(result.isfVerdict()).isEqualTo(Verdict.CONFORMS);
    assertThat(kinds(result)).containsExactly(Finding.Kind.INCOMPLETE);
    assertThat(result.findings().get(0).sentence())
        .contains("250 to 2250 µm", "judged from 500 to 2000 µm");
  }

  @Test
  void stepsTooWideForTheLimitsAreNotJudged() {
    CurveResult result = CurveAnalysis.of(ideal(steps(250, 2250, 500)), API);
    assertThat(result.isfVerdict()).isEqualTo(Verdict.NOT_JUDGED);
    assertThat(result.dslVerdict()).isEqualTo(Verdict.CONFORMS);
    assertThat(result.verdict()).isEqualTo(Verdict.DOES_NOT_CONFORM);
    assertThat(result.isfTrend()).isEmpty();
    assertThat(result.findings().get(0).sentence()).contains("one increment of 250 µm");
  }

  @Test
  void oneMissingReadingIsNamed() {
    CurveResult result = CurveAnalysis.of(ideal(250, 500, 750, 1250, 1500, 1750, 2000, 2250), API);
    assertThat(result.verdict()).isEqualTo(Verdict.DOES_NOT_CONFORM);
    assertThat(result.worse().judgedIncrements()).hasSize(6);
    assertThat(result.findings().get(0).sentence()).contains("750 to 1250 µm", "wider");
  }

  @Test
  void gapsSetByHandMayBeOffByAFewPercentOfTheIncrement() {
    CurveResult result =
        CurveAnalysis.of(ideal(252, 499, 751, 1003, 1247, 1500, 1752, 1998, 2249), API);
    assertThat(result.verdict()).isEqualTo(Verdict.CONFORMS);
    assertThat(result.asf()).isCloseTo(API.slope(), within(1e-12));
  }

  @Test
  void aCurveElsewhereIsRefused() {
    assertThatThrownBy(() -> CurveAnalysis.of(ideal(steps(3000, 4000, 250)), API))
        .isInstanceOf(Refused.class)
        .hasMessageContaining("api670-2mm");
  }

  @Test
  void saturatedDeadAndTurningCurvesAreResults() {
    CurveResult saturated =
        CurveAnalysis.of(inchGrid(-2, -4, -6, -8, -10, -12, -14, -14.1, -14.1), API);
    assertThat(kinds(saturated)).contains(Finding.Kind.SATURATED);
    assertThat(saturated.linearRange()).contains(new GapRange(254, 1778));
    CurveResult near = CurveAnalysis.of(inchGrid(-0.7, -0.7, -2, -4, -6, -8, -10, -12, -14), API);
    assertThat(near.findings())
        .anyMatch(f -> f.kind() == Finding.Kind.SATURATED && f.sentence().startsWith("Up to 20"));
    CurveResult dead = CurveAnalysis.of(inchGrid(0, 0, 0, 0, 0, 0, 0, 0, 0), API);
    assertThat(kinds(dead)).contains(Finding.Kind.DEAD).doesNotContain(Finding.Kind.SATURATED);
    CurveResult turning = CurveAnalysis.of(inchGrid(-2, -4, -6, -8, -7, -12, -14, -16, -18), API);
    assertThat(turning.findings())
        .anyMatch(
            f -> f.kind() == Finding.Kind.NOT_MONOTONE && f.sentence().contains("40 to 50 mil"));
    CurveResult reversed = CurveAnalysis.of(inchGrid(-18, -16, -14, -12, -10, -8, -6, -4, -2), API);
    assertThat(kinds(reversed)).contains(Finding.Kind.REVERSED);
    assertThat(reversed.asf()).isNegative();
    for (CurveResult result : List.of(saturated, near, dead, turning, reversed)) {
      assertThat(result.verdict()).isEqualTo(Verdict.DOES_NOT_CONFORM);
    }
  }

  @Test
  void ofTwoRunsTheWorseCounts() {
    List<CurveReading> both =
        new ArrayList<>(inchRun(Run.UP, -2, -4, -6, -8, -10, -12, -14, -16, -18));
    both.addAll(inchRun(Run.DOWN, -2, -4, -6, -8.05, -10.05, -12, -14, -16, -18));
    CurveResult result = CurveAnalysis.of(new Curve(both), API);
    assertThat(result.runs()).map(RunResult::run).containsExactly(Run.UP, Run.DOWN);
    assertThat(result.worse().run()).isEqualTo(Run.DOWN);
    assertThat(result.verdict()).isEqualTo(Verdict.CONFORMS);
    Hysteresis hysteresis = result.hysteresis().orElseThrow();
    assertThat(hysteresis.millivolts()).isCloseTo(50, within(1e-9));
    assertThat(hysteresis.micrometres()).isCloseTo(6.35, within(1e-9));
    assertThat(hysteresis.atGapMicrometres()).isIn(1016.0, 1270.0);

    both.replaceAll(
        r ->
            r.run() == Run.UP && r.gapMicrometres() == 2286
                ? Curves.typed(Run.UP, "90", Unit.MIL, -17.88)
                : r);
    CurveResult failed = CurveAnalysis.of(new Curve(both), API);
    assertThat(failed.worse().run()).isEqualTo(Run.UP);
    assertThat(failed.verdict()).isEqualTo(Verdict.DOES_NOT_CONFORM);
    assertThat(failed.runs().get(1).verdict()).isEqualTo(Verdict.CONFORMS);
  }

  static double[] weave(double[] gaps, double[] volts) {
    double[] both = new double[2 * gaps.length];
    for (int i = 0; i < gaps.length; i++) {
      both[2 * i] = gaps[i];
      both[2 * i + 1] = volts[i];
    }
    return both;
  }
}
