package loopwright.trend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.numerics.ParallelLines;
import loopwright.numerics.StraightLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Intervals are compared with consequences of the named formulas worked out apart from the program
 * with more digits; bounds of shares with those that R's binom.test gives.
 */
class TrendTest {
  private static final long YEAR = 31_557_600;

  private static Observation at(double years, double value, String parts) {
    return new Observation(Instant.ofEpochSecond((long) (years * YEAR)), value, parts);
  }

  @ParameterizedTest(name = "{0} months, {1} of {2}, target {3}: {4}")
  @CsvSource({
    "12, 90, 100, 0.95, 5.8420322718389", "12, 95, 100, 0.95, 12.0",
    "12, 98, 100, 0.95, 30.46718060984", "12, 80, 100, 0.85, 8.7397872019486",
    "12, 97, 100, 0.99, 3.9595262057479"
  })
  void failuresAtAnEvenRate(double months, int within, int found, double target, double next) {
    assertThat(new Reliability(within, found).interval(months, target))
        .isCloseTo(next, within(1e-10));
  }

  @ParameterizedTest(name = "{0} of {1}: {2} to {3}")
  @CsvSource({
    "8, 8, 0.6305833524471807, 1.0",
    "19, 20, 0.7512672372279722, 0.9987349105020502",
    "18, 20, 0.6830172859809177, 0.9876514728297052",
    "57, 60, 0.8607567532789272, 0.9895676703556517",
    "0, 10, 0.0, 0.3084971078187607",
    "95, 100, 0.8871650888945373, 0.9835681208179479"
  })
  void exactBoundsOfAShare(int within, int found, double lower, double upper) {
    Reliability reliability = new Reliability(within, found);
    assertThat(reliability.lower(0.95)).isCloseTo(lower, within(1e-9));
    assertThat(reliability.upper(0.95)).isCloseTo(upper, within(1e-9));
  }

  @ParameterizedTest(name = "a {0}, R {1}: b {2}")
  @CsvSource({
    "0.1, 0.85, 0.41730478631198",
    "0.1, 0.95, 0.83649200917344",
    "0.05, 0.90, 0.3553910837822"
  })
  void growthAndShrinkageBalance(double growth, double target, double shrinkage) {
    Staircase staircase = new Staircase(growth, target);
    assertThat(staircase.shrinkage()).isCloseTo(shrinkage, within(1e-12));
    assertThat(Math.pow(1 + growth, target) * Math.pow(1 - staircase.shrinkage(), 1 - target))
        .isCloseTo(1, within(1e-12));
  }

  @Test
  void aDriftUsesUpATolerance() {
    assertThat(DriftInterval.months(1.0, 0.3, 0.05)).isCloseTo(19.078784028339, within(1e-10));
    assertThat(DriftInterval.months(0.2, 0.3, 0.05)).isZero();
    assertThat(DriftInterval.months(-0.2, 0.3, 0.05)).as("outside already").isZero();
    assertThatThrownBy(() -> DriftInterval.months(1, 0, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void otherPartsAreAnotherLine() {
    List<Observation> all = new ArrayList<>();
    for (int year = 0; year < 6; year++) {
      all.add(at(2010 - 1970 + year, year < 3 ? 7.80 + 0.01 * year : 7.95, year < 3 ? "a" : "b"));
    }
    Trend trend = Trend.of(all, 0);
    assertThat(trend.segments()).extracting(Segment::name).containsExactly("a", "b");
    Segment first = trend.segments().get(0);
    assertThat(first.line().orElseThrow().slope()).isCloseTo(0.01, within(1e-6));
    assertThat(trend.latest().orElseThrow().name()).isEqualTo("b");
    assertThat(trend.latest().orElseThrow().drifts()).isFalse();
    assertThat(Trend.of(List.of(), 0).isEmpty()).isTrue();
    assertThat(Trend.of(List.of(at(40, 7, "a"), at(41, 8, "a")), 0).segments().get(0).line())
        .as("two show no spread")
        .isEmpty();
  }

  @Test
  void anOutlierIsMarkedAndStaysInTheFit() {
    double[] noise = {0.01, -0.01, 0.005, -0.005, 0.01, -0.01, 0.005, -0.005};
    List<Observation> all = new ArrayList<>();
    for (int i = 0; i < noise.length; i++) {
      all.add(at(40 + i, 7.874 + noise[i], "a"));
    }
    assertThat(Trend.of(all, 0).segments().get(0).outliers()).isEmpty();
    Observation far = at(43.5, 8.3, "a");
    all.add(far);
    Segment segment = Trend.of(all, 0).segments().get(0);
    assertThat(segment.outliers()).containsExactly(far);
    assertThat(Trend.of(all, 0.5).segments().get(0).outliers()).as("too near to matter").isEmpty();
    assertThat(segment.line().orElseThrow().count()).isEqualTo(9);
  }

  /** y = 0, 1, 2, 4 at x = 0, 1, 2, 3: t(0.975, 2) = 4.302653, s² = 0.15, worked out by hand. */
  @Test
  void theBandHoldsTheLine() {
    List<Observation> all = List.of(at(40, 0, "a"), at(41, 1, "a"), at(42, 2, "a"), at(43, 4, "a"));
    Segment segment = Trend.of(all, 0).segments().get(0);
    assertThat(segment.line().orElseThrow().slope()).isCloseTo(1.3, within(1e-6));
    double middle = 4.302653 * Math.sqrt(0.15 / 4);
    assertThat(segment.halfWidthAt(41.5, all.get(0), 0.95)).isCloseTo(middle, within(1e-5));
    double end = 4.302653 * Math.sqrt(0.15 * (1.0 / 4 + 1.5 * 1.5 / 5));
    assertThat(segment.halfWidthAt(40, all.get(0), 0.95)).isCloseTo(end, within(1e-5));
  }

  /**
   * Left at 0 and found at 1 a year later, then adjusted back each time: without levels there is no
   * slope, with them it is 1 a year. Slope, its standard error and freedom worked out by hand for
   * found values 1.0, 1.1, 0.9: within pairs Σ(x−x̄)² = 0.5 each, b = 1, S = 0.01, f = 2.
   */
  @Test
  void anAdjustmentIsNoDrift() {
    List<Observation> all = new ArrayList<>();
    double[] found = {1.0, 1.1, 0.9};
    for (int i = 0; i < 3; i++) {
      all.add(new Observation(Instant.ofEpochSecond((40 + 2 * i) * YEAR), 0, "a", i));
      all.add(new Observation(Instant.ofEpochSecond((41 + 2 * i) * YEAR), found[i], "a", i));
    }
    ParallelLines line = Trend.of(all, 0).segments().get(0).line().orElseThrow();
    assertThat(line.slope()).isCloseTo(1, within(1e-9));
    assertThat(line.degreesOfFreedom()).isEqualTo(2);
    assertThat(line.slopeStandardError()).isCloseTo(Math.sqrt(0.01 / 2 / 1.5), within(1e-9));
    assertThat(Trend.of(all, 0).segments().get(0).outliers()).isEmpty();
    List<Observation> unadjusted =
        all.stream().map(o -> new Observation(o.at(), o.value(), "a")).toList();
    assertThat(Trend.of(unadjusted, 0).segments().get(0).drifts()).isFalse();
  }

  /** The same line as by the straight line, whose formulas are checked against the guide. */
  @Test
  void oneLevelIsTheStraightLine() {
    double[] x = {40, 41.2, 42.9, 44, 45.5};
    double[] y = {7.80, 7.83, 7.81, 7.88, 7.86};
    StraightLine straight = StraightLine.fit(x, y);
    ParallelLines one = ParallelLines.fit(x, y, new int[x.length]);
    assertThat(one.slope()).isCloseTo(straight.slope(), within(1e-12));
    assertThat(one.slopeStandardError()).isCloseTo(straight.slopeStandardError(), within(1e-12));
    assertThat(one.at(50, 0)).isCloseTo(straight.at(50), within(1e-10));
    assertThat(one.standardErrorAt(50, 0)).isCloseTo(straight.standardErrorAt(50), within(1e-10));
    assertThat(one.slopeSignificance()).isCloseTo(straight.slopeSignificance(), within(1e-9));
    assertThat(ParallelLines.fits(new double[] {1, 1, 1}, new int[3])).isFalse();
    assertThat(ParallelLines.fits(new double[] {1, 2, 3, 4}, new int[] {0, 0, 1, 1})).isTrue();
    assertThat(ParallelLines.fits(new double[] {1, 2, 3}, new int[] {0, 0, 1})).isFalse();
  }

  private static IntervalAdvice.Known known(int months, Segment segment, Boolean... within) {
    return new IntervalAdvice.Known(
        months, List.of(within), Optional.ofNullable(segment), 0.3937, 7.874);
  }

  @Test
  void theShortestOfTheMethodsIsSuggestedWithEachOnesReason() {
    IntervalAdvice good = IntervalAdvice.of(known(24, null, true, true, true, true, true));
    assertThat(good.months()).hasValue(25);
    assertThat(good.reasons()).extracting(r -> r.months().isPresent()).contains(true, false);
    IntervalAdvice bad = IntervalAdvice.of(known(24, null, true, true, true, true, false));
    // staircase 24 · (1 − 0.3554) = 15.47, reliability 24 ln 0.9/ln 0.8 = 11.33
    assertThat(bad.months()).hasValue(11);
    assertThat(IntervalAdvice.of(known(24, null)).months()).isEmpty();
  }

  @Test
  void aDriftShortensTheInterval() {
    List<Observation> all = new ArrayList<>();
    double[] noise = {0.002, -0.002, 0.001, -0.001, 0.002};
    for (int i = 0; i < noise.length; i++) {
      all.add(at(40 + i, 7.874 + 0.08 * i + noise[i], "a"));
    }
    Segment segment = Trend.of(all, 0).segments().get(0);
    assertThat(segment.drifts()).isTrue();
    IntervalAdvice advice = IntervalAdvice.of(known(24, segment, true, true, true, true, true));
    // 0.3937 − 0.32 = 0.07 are left and 0.08 a year are used up: some eleven months
    assertThat(advice.months().getAsInt()).isBetween(10, 12);
    assertThat(advice.reasons().get(2).sentence()).contains("% of nominal a year");
  }
}
