package loopwright.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Synthetic curves on the inch grid whose values follow by hand arithmetic from the definitions;
 * limits after API Std 670, from memory.
 */
class CurveFixturesTest {
  private static final double TOLERANCE = 1e-9;

  @ParameterizedTest(name = "{0}: {9}")
  @CsvSource(
      delimiter = '|',
      useHeadersInDisplayName = true,
      textBlock =
          """
  case | volts at 10, 20 … 90 mil | ISF, mV/mil | ASF | least squares | max DSL, mil | ISF verdict | DSL verdict | trend | source
  F1 | -2 -4 -6 -8 -10 -12 -14 -16 -18 | 200 200 200 200 200 200 200 200 | 200 | 200 | 0 | conforms | conforms | no trend | synthetic, V = -0.2 g
  F2 | -1.93 -3.97 -6.02 -8.03 -10.01 -12.00 -13.98 -15.93 -17.84 | 204 205 201 198 199 198 195 191 | 198.875 | 199.0166666666667 | 0.475 | conforms | conforms | falls | synthetic
  F3 | -2 -4 -6 -8 -10 -12 -14 -16 -17.88 | 200 200 200 200 200 200 200 188 | 198.5 | 199.2 | 0.3 | does not conform | conforms | no trend | synthetic, last reading of F1 off
  F4 | -2.08 -4.16 -6.24 -8.32 -10.4 -12.48 -14.56 -16.64 -18.72 | 208 208 208 208 208 208 208 208 | 208 | 208 | 1.6 | conforms | does not conform | no trend | synthetic, slope +4 %
  F5 | -1.92 -3.84 -5.76 -7.68 -9.6 -11.52 -13.44 -15.36 -17.28 | 192 192 192 192 192 192 192 192 | 192 | 192 | 1.6 | conforms | does not conform | no trend | synthetic, slope -4 %
  F6 | -1.65 -3.53 -5.37 -7.17 -8.92 -10.61 -12.23 -13.77 -15.24 | 188 184 180 175 169 162 154 147 | 169.875 | | 6.025 | does not conform | does not conform | falls | synthetic, too long by 1 m
  F7 | -2.39 -4.53 -6.72 -8.98 -11.33 -13.79 -16.41 -19.24 -22.38 | 214 219 226 235 246 262 283 314 | 249.875 | | 9.975 | does not conform | does not conform | rises | synthetic, too short by 1 m
  F8 | -2.6 -4.6 -6.6 -8.6 -10.6 -12.6 -14.6 -16.6 -18.6 | 200 200 200 200 200 200 200 200 | 200 | 200 | 0 | conforms | conforms | no trend | synthetic, F1 lower by 0.6 V
  """)
  void fixtures(
      String name,
      String volts,
      String isf,
      double asf,
      Double leastSquares,
      double maxDsl,
      String isfVerdict,
      String dslVerdict,
      String trend,
      String source) {
    CurveResult result = CurveAnalysis.of(Curves.inchGrid(numbers(volts)), Curves.API);
    RunResult run = result.worse();

    assertThat(run.points().get(0).isf()).isEmpty();
    double[] found =
        run.points().stream().skip(1).mapToDouble(p -> p.isf().getAsDouble() * 25.4).toArray();
    assertThat(found).containsExactly(numbers(isf), within(TOLERANCE));
    assertThat(result.asf() * 25.4).isCloseTo(asf, within(TOLERANCE));
    if (leastSquares != null) {
      assertThat(result.leastSquaresSlope() * 25.4).isCloseTo(leastSquares, within(TOLERANCE));
    }
    assertThat(result.maxDsl() / 25.4).isCloseTo(maxDsl, within(TOLERANCE));
    assertThat(result.isfVerdict().label()).isEqualTo(isfVerdict);
    assertThat(result.dslVerdict().label()).isEqualTo(dslVerdict);
    assertThat(result.isfTrend().orElseThrow().direction().label()).isEqualTo(trend);
    boolean both = isfVerdict.equals("conforms") && dslVerdict.equals("conforms");
    assertThat(result.verdict().label()).isEqualTo(both ? "conforms" : "does not conform");
  }

  @Test
  void theSecondFixtureInDetail() {
    Curve curve =
        Curves.inchGrid(numbers("-1.93 -3.97 -6.02 -8.03 -10.01 -12 -13.98 -15.93 -17.84"));
    CurveResult minimax = CurveAnalysis.of(curve, Curves.API);
    assertThat(minimax.worstIsfPercent().getAsDouble()).isCloseTo(-4.5, within(TOLERANCE));
    PlacedLine line = new PlacedLine(Curves.API.slope(), minimax.worse().zeroVoltsMicrometres());
    assertThat(line.volts(0)).isCloseTo(0.065, within(TOLERANCE));
    assertThat(minimax.maxDsl()).isCloseTo(12.065, within(TOLERANCE));

    CurveResult mean = CurveAnalysis.of(curve, Curves.withRule(ShiftRule.MEAN));
    assertThat(mean.maxDsl() / 25.4).isCloseTo(0.639, within(0.0005));
  }

  /** The same slope, two zeros 1 V apart: nothing but the voltages differs. Own arithmetic. */
  @Test
  void anotherZeroChangesNothingThatIsJudged() {
    CurveResult one =
        CurveAnalysis.of(Curves.inchGrid(numbers("-1 -3 -5 -7 -9 -11 -13 -15 -17")), Curves.API);
    CurveResult other =
        CurveAnalysis.of(Curves.inchGrid(numbers("-2 -4 -6 -8 -10 -12 -14 -16 -18")), Curves.API);
    assertThat(one.asf()).isEqualTo(other.asf());
    assertThat(one.maxDsl()).isCloseTo(other.maxDsl(), within(TOLERANCE));
    assertThat(one.midRangeVolts().getAsDouble()).isEqualTo(-9);
    assertThat(other.midRangeVolts().getAsDouble()).isEqualTo(-10);
  }

  @Test
  void theMetricGridOnTheExactSlope() {
    CurveResult result = CurveAnalysis.of(Curves.ideal(Curves.steps(250, 2250, 250)), Curves.API);
    assertThat(result.grid().toString()).isEqualTo("250 to 2250 µm by 250");
    assertThat(result.asf()).isCloseTo(7.874015748031496, within(1e-9));
    assertThat(result.points().get(8).isf().getAsDouble())
        .isCloseTo(7.874015748031496, within(1e-9));
    assertThat(result.verdict()).isEqualTo(Verdict.CONFORMS);
  }

  private static double[] numbers(String text) {
    return Arrays.stream(text.strip().split(" ")).mapToDouble(Double::parseDouble).toArray();
  }
}
