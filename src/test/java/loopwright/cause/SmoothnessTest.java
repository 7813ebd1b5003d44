package loopwright.cause;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

/** Probabilities move smoothly with what was measured: no threshold chooses a cause. */
class SmoothnessTest {
  private static final double MOST_AT_ONE_PERCENT = 0.3;
  private static final double MOST_AT_A_HUNDREDTH = 0.006;

  /** Where a baseline becomes a stated one: a tenth of what the change comes to, and some. */
  private static final double MOST_AT_A_BLEND = 0.03;

  private static Diagnosis find(double baseline, double baselineVolts, double volts, double s) {
    return Cases.find(
        Baseline.line(1270, baselineVolts, baseline), Observation.of(volts, Math.abs(s)));
  }

  private static double largestStep(Diagnosis one, Diagnosis other) {
    double most = 0;
    for (Cause cause : Cause.values()) {
      most = Math.max(most, Math.abs(one.probability(cause) - other.probability(cause)));
    }
    for (var entry : one.lengthProbabilities().entrySet()) {
      double after = other.lengthProbabilities().getOrDefault(entry.getKey(), 0.0);
      most = Math.max(most, Math.abs(entry.getValue() - after));
    }
    return most;
  }

  /** A loop whose baseline is its own, anywhere it can be found. */
  @Property(tries = 20)
  void changingAValueByOnePercentNeverJumps(
      @ForAll @DoubleRange(min = -17, max = -3) double volts,
      @ForAll @DoubleRange(min = -0.5, max = 0.4) double lnRatio) {
    double own = Cases.OWN / 25.4;
    double s = own * Math.exp(lnRatio);
    Diagnosis here = find(own, -9, volts, s);
    assertThat(largestStep(here, find(own, -9, volts * 1.01, s))).isLessThan(MOST_AT_ONE_PERCENT);
    assertThat(largestStep(here, find(own, -9, volts, s * 1.01))).isLessThan(MOST_AT_ONE_PERCENT);
    assertThat(largestStep(here, find(own * 1.01, -9, volts, s))).isLessThan(MOST_AT_ONE_PERCENT);
    assertThat(largestStep(here, find(own, -9 * 1.01, volts, s))).isLessThan(MOST_AT_ONE_PERCENT);
  }

  /** A step a hundred times as small moves them about a hundred times as little. */
  @Property(tries = 12)
  void aTinyChangeIsTiny(
      @ForAll @DoubleRange(min = -12, max = -6) double volts,
      @ForAll @DoubleRange(min = -0.3, max = 0.3) double lnRatio) {
    double own = Cases.OWN / 25.4;
    double s = own * Math.exp(lnRatio);
    Diagnosis here = find(own, -9, volts, s);
    assertThat(largestStep(here, find(own, -9, volts * 1.0001, s))).isLessThan(MOST_AT_A_HUNDREDTH);
    assertThat(largestStep(here, find(own, -9, volts, s * 1.0001))).isLessThan(MOST_AT_A_HUNDREDTH);
    assertThat(largestStep(here, find(own * 1.0001, -9, volts, s))).isLessThan(MOST_AT_A_HUNDREDTH);
  }

  /**
   * From a measured baseline to a nominal one and beyond it: that a stated line is less sure comes
   * little by little, a hundredth of a per cent a step.
   */
  @Property(tries = 4)
  void aBaselineBecomesAStatedOneLittleByLittle(
      @ForAll @DoubleRange(min = -10.5, max = -7.5) double volts,
      @ForAll @DoubleRange(min = -0.18, max = 0.12) double lnRatio) {
    double s = Cases.OWN / 25.4 * Math.exp(lnRatio);
    Diagnosis before = find(200.0 * (1 - 0.004) / 25.4, -9, volts, s);
    for (int step = -39; step <= 40; step++) {
      Diagnosis here = find(200.0 * (1 + step * 0.0001) / 25.4, -9, volts, s);
      assertThat(largestStep(before, here)).isLessThan(MOST_AT_A_BLEND);
      before = here;
    }
  }

  /** Probabilities are probabilities, and nothing comes out as no number. */
  @Property(tries = 20)
  void everyAnswerIsWhole(
      @ForAll @DoubleRange(min = -24, max = 0) double volts,
      @ForAll @DoubleRange(min = -6, max = 1.6) double lnRatio) {
    Diagnosis diagnosis = find(Cases.OWN / 25.4, -9, volts, Cases.OWN / 25.4 * Math.exp(lnRatio));
    assertThat(diagnosis.causes().stream().mapToDouble(RankedCause::probability).sum())
        .isBetween(1 - 1e-9, 1 + 1e-9);
    assertThat(diagnosis.causes())
        .allSatisfy(
            cause -> {
              assertThat(cause.probability()).isBetween(0.0, 1.0);
              assertThat(cause.predictedVolts()).isFinite();
              assertThat(cause.predictedSensitivity()).isFinite();
              assertThat(diagnosis.explain(cause)).doesNotContain("NaN");
            });
    assertThat(diagnosis.gapMicrometres()).isFinite();
    assertThat(diagnosis.impliedLength().metres()).isFinite();
    assertThat(diagnosis.impliedLength().factor()).isFinite();
    assertThat(diagnosis.measurements()).allSatisfy(each -> assertThat(each.bits()).isFinite());
  }
}
