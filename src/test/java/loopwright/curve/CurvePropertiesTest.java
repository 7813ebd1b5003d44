package loopwright.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.Function;
import loopwright.units.Numbers;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;

/** What must not change when the same curve is written otherwise, or moved, or scaled. */
class CurvePropertiesTest {
  private static final double ROUNDING = 1e-9;
  private static final ToleranceProfile API = Curves.API;

  @Property(tries = 300)
  void unitsAndSignsChangeNothing(
      @ForAll("curves") List<BigDecimal> volts, @ForAll boolean mil, @ForAll boolean millivolts) {
    CurveResult plain = analysed(volts, 1, true, false, SignConvention.NEGATIVE);
    same(plain, analysed(volts, 1, mil, millivolts, SignConvention.NEGATIVE));
    same(plain, analysed(volts, -1, mil, millivolts, SignConvention.MAGNITUDE));
  }

  @Property(tries = 300)
  void orderWithinARunDoesNotMatter(@ForAll("curves") List<BigDecimal> volts, @ForAll long seed) {
    List<CurveReading> readings = readings(volts);
    CurveResult sorted = CurveAnalysis.of(new Curve(readings), API);
    List<CurveReading> shuffled = new ArrayList<>(readings);
    Collections.shuffle(shuffled, new Random(seed));
    assertThat(CurveAnalysis.of(new Curve(shuffled), API)).isEqualTo(sorted);
  }

  @Property(tries = 300)
  void aConstantVoltageChangesNoSlopeAndNoDeviation(
      @ForAll("curves") List<BigDecimal> volts,
      @ForAll @DoubleRange(min = -0.9, max = 0.9) double offset) {
    CurveResult plain = CurveAnalysis.of(new Curve(readings(volts)), API);
    CurveResult moved = CurveAnalysis.of(curve(volts, v -> v - 1 + offset), API);
    assertThat(moved.asf()).isCloseTo(plain.asf(), within(ROUNDING));
    assertThat(moved.leastSquaresSlope()).isCloseTo(plain.leastSquaresSlope(), within(ROUNDING));
    assertThat(moved.maxDsl()).isCloseTo(plain.maxDsl(), within(1e-6));
    assertThat(isf(moved)).containsExactly(isf(plain), within(ROUNDING));
    assertThat(deviations(moved)).containsExactly(deviations(plain), within(1e-6));
  }

  @Property(tries = 300)
  void scalingVoltsAndNominalScalesEverySlopeAndNoDeviation(
      @ForAll("curves") List<BigDecimal> volts,
      @ForAll @DoubleRange(min = 0.2, max = 1.1) double factor) {
    CurveResult plain = CurveAnalysis.of(new Curve(readings(volts)), API);
    ToleranceProfile scaled =
        Curves.profile(
            ScaleFactor.millivoltsPerMil(BigDecimal.valueOf(200 * factor).toPlainString()),
            ShiftRule.MINIMAX,
            API.grids());
    CurveResult other = CurveAnalysis.of(curve(volts, v -> v * factor), scaled);
    assertThat(other.asf()).isCloseTo(factor * plain.asf(), within(ROUNDING));
    assertThat(other.maxDsl()).isCloseTo(plain.maxDsl(), within(1e-6));
    assertThat(isf(other))
        .containsExactly(
            Arrays.stream(isf(plain)).map(v -> factor * v).toArray(), within(ROUNDING));
  }

  @Property(tries = 300)
  void minimaxIsHalfTheSpreadAndNeverBeatenByTheMean(@ForAll("curves") List<BigDecimal> volts) {
    Curve curve = new Curve(readings(volts));
    CurveResult minimax = CurveAnalysis.of(curve, API);
    double[] deviations = deviations(minimax);
    double most = Arrays.stream(deviations).max().orElseThrow();
    double least = Arrays.stream(deviations).min().orElseThrow();
    assertThat(most).isCloseTo(-least, within(1e-6));
    assertThat(minimax.maxDsl()).isCloseTo((most - least) / 2, within(1e-6));
    CurveResult mean = CurveAnalysis.of(curve, Curves.withRule(ShiftRule.MEAN));
    assertThat(minimax.maxDsl()).isLessThanOrEqualTo(mean.maxDsl() + 1e-6);
    assertThat(Arrays.stream(deviations(mean)).sum()).isCloseTo(0, within(1e-6));
  }

  @Property(tries = 300)
  void theLinearRangePassesBothTestsByItself(@ForAll("curves") List<BigDecimal> volts) {
    CurveResult result = CurveAnalysis.of(new Curve(readings(volts)), API);
    boolean anyIncrement = result.worse().increments().stream().anyMatch(Increment::conforms);
    assertThat(result.linearRange().isPresent()).isEqualTo(anyIncrement);
    result
        .linearRange()
        .ifPresent(
            range -> {
              List<CurvePoint> inside =
                  result.points().stream()
                      .filter(
                          p ->
                              p.gapMicrometres() >= range.fromMicrometres()
                                  && p.gapMicrometres() <= range.toMicrometres())
                      .toList();
              double[] residuals =
                  inside.stream()
                      .mapToDouble(p -> p.gapMicrometres() + 1000 * p.volts() / API.slope())
                      .toArray();
              double spread =
                  Arrays.stream(residuals).max().orElseThrow()
                      - Arrays.stream(residuals).min().orElseThrow();
              assertThat(spread / 2).isLessThanOrEqualTo(25.4 * (1 + 1e-9));
              assertThat(inside.stream().skip(1))
                  .allMatch(p -> API.isfConforms(p.isf().getAsDouble()));
            });
    if (result.verdict() == Verdict.CONFORMS) {
      assertThat(result.linearRange()).contains(new GapRange(254, 2286));
    }
  }

  /** Nine readings within some tenths of a volt of the nominal line, in millivolt steps. */
  @Provide
  Arbitrary<List<BigDecimal>> curves() {
    Arbitrary<Integer> noise = Arbitraries.integers().between(-300, 300);
    Arbitrary<Integer> quiet = Arbitraries.integers().between(-40, 40);
    return Arbitraries.oneOf(quiet.list().ofSize(9), noise.list().ofSize(9))
        .map(
            errors -> {
              List<BigDecimal> volts = new ArrayList<>();
              for (int i = 0; i < errors.size(); i++) {
                volts.add(BigDecimal.valueOf(-2000L * (i + 1) - 400 + errors.get(i), 3));
              }
              return volts;
            });
  }

  private static List<CurveReading> readings(List<BigDecimal> volts) {
    return Curves.inchRun(Run.UP, volts.stream().mapToDouble(BigDecimal::doubleValue).toArray());
  }

  private static Curve curve(List<BigDecimal> volts, Function<Double, Double> change) {
    return Curves.inchGrid(
        volts.stream().mapToDouble(v -> change.apply(v.doubleValue())).toArray());
  }

  /** As typed on a page in those units, through the checks. */
  private static CurveResult analysed(
      List<BigDecimal> volts, int factor, boolean mil, boolean millivolts, SignConvention sign) {
    List<CurveEntry.Cells> cells = new ArrayList<>();
    for (int i = 0; i < volts.size(); i++) {
      BigDecimal gap = BigDecimal.valueOf(10L * (i + 1));
      BigDecimal volt = volts.get(i).multiply(BigDecimal.valueOf(factor));
      cells.add(
          new CurveEntry.Cells(
              i + 1,
              Numbers.plain(mil ? gap : gap.multiply(new BigDecimal("25.4"))),
              Numbers.plain(millivolts ? volt.multiply(BigDecimal.valueOf(1000)) : volt),
              ""));
    }
    CurveEntry entry =
        new CurveEntry(
            mil ? Unit.MIL : Unit.MICROMETRE, millivolts ? Unit.MILLIVOLT : Unit.VOLT, sign, cells);
    CurveCheck check = CurveCheck.of(entry, API);
    assertThat(check.complaints()).isEmpty();
    assertThat(check.questions()).isEmpty();
    return CurveAnalysis.of(check.curve().orElseThrow(), API);
  }

  private static void same(CurveResult one, CurveResult other) {
    assertThat(other.grid()).isEqualTo(one.grid());
    assertThat(other.asf()).isCloseTo(one.asf(), within(ROUNDING));
    assertThat(other.maxDsl()).isCloseTo(one.maxDsl(), within(ROUNDING));
    assertThat(isf(other)).containsExactly(isf(one), within(ROUNDING));
    assertThat(other.verdict()).isEqualTo(one.verdict());
    assertThat(other.linearRange()).isEqualTo(one.linearRange());
  }

  private static double[] isf(CurveResult result) {
    return result.points().stream().skip(1).mapToDouble(p -> p.isf().getAsDouble()).toArray();
  }

  private static double[] deviations(CurveResult result) {
    return result.points().stream().mapToDouble(CurvePoint::deviationMicrometres).toArray();
  }
}
