package loopwright.cause;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What the trade expects of a 200 mV/mil loop with a 5.0 m driver, −9 V at 50 mil; common practice,
 * no source. 5.5 m fitted gives −7.9 V and 177 mV/mil at the same gap, and 170 mV/mil once the
 * probe was moved out until the volts read −9.0 again.
 */
class CheckValuesTest {

  private static BigDecimal likeliestLength(Diagnosis diagnosis) {
    return diagnosis.lengthProbabilities().entrySet().stream()
        .max(Comparator.comparingDouble(Map.Entry::getValue))
        .orElseThrow()
        .getKey();
  }

  private static double width(Diagnosis diagnosis) {
    return diagnosis.impliedLength().highMetres() - diagnosis.impliedLength().lowMetres();
  }

  /** Baselines: the loop's own state, and the stated line. */
  @ParameterizedTest
  @CsvSource({
    "202, -7.9, 177, false",
    "202, -9.0, 170, true",
    "200, -7.9, 177, false",
    "200, -9.0, 170, true"
  })
  void halfAMetreTooMuch(double baseline, double volts, double sensitivity, boolean regapped) {
    Diagnosis diagnosis = Cases.find(Cases.line(baseline), Cases.seen(volts, sensitivity));
    RankedCause first = diagnosis.first();
    assertThat(first.cause()).isEqualTo(Cause.OVER_LENGTH);
    assertThat(first.fittedLength()).contains(new BigDecimal("5.5"));
    assertThat(first.regapped()).isEqualTo(regapped);
    assertThat(likeliestLength(diagnosis)).isEqualTo(new BigDecimal("5.5"));
    ImpliedLength implied = diagnosis.impliedLength();
    assertThat(5.5).isBetween(implied.lowMetres(), implied.highMetres());
    assertThat(first.predictedVolts()).isCloseTo(volts, within(0.3));
    assertThat(first.predictedSensitivity() * 25.4).isCloseTo(sensitivity, within(4.0));
  }

  @ParameterizedTest
  @CsvSource({"-7.9, 202, GAP_MOVED", "-9.0, 202, HEALTHY"})
  void withTheRightLength(double volts, double sensitivity, Cause cause) {
    Diagnosis diagnosis = Cases.find(Cases.line(Cases.OWN), Cases.seen(volts, sensitivity));
    assertThat(diagnosis.first().cause()).isEqualTo(cause);
    assertThat(likeliestLength(diagnosis)).isEqualTo(new BigDecimal("5.0"));
    assertThat(diagnosis.first().regapped()).isFalse();
  }

  @ParameterizedTest
  @CsvSource({"-7.9, 177", "-9.0, 170"})
  void aStatedLineMakesTheIntervalWider(double volts, double sensitivity) {
    Observation seen = Cases.seen(volts, sensitivity);
    Diagnosis own = Cases.find(Cases.line(Cases.OWN), seen);
    Diagnosis stated = Cases.find(Cases.line(Cases.STATED), seen);
    assertThat(width(stated)).isGreaterThan(width(own));
    assertThat(stated.warnings()).anyMatch(warning -> warning.contains("nominal line"));
    assertThat(own.warnings()).noneMatch(warning -> warning.contains("nominal line"));
  }

  /** −9 V at 202 mV/mil: 5.4 mil out compensate what 5.5 m take away, give or take. */
  @Test
  void theHiddenGapIsTold() {
    Diagnosis diagnosis = Cases.find(Cases.line(Cases.OWN), Cases.seen(-9.0, 170));
    assertThat(diagnosis.gapMicrometres()).isBetween(1350.0, 1480.0);
    assertThat(diagnosis.gapUncertainty()).isBetween(20.0, 120.0);
    assertThat(diagnosis.warnings()).anyMatch(warning -> warning.contains("farther away"));
    assertThat(diagnosis.explain(diagnosis.first()))
        .contains("Half a metre of cable too much")
        .contains("moved away from the shaft");
    assertThat(diagnosis.next().measurement()).isEqualTo(NextMeasurement.LABELS);
  }

  /** What rests at an end of the output says nothing of where the probe stands. */
  @ParameterizedTest
  @CsvSource({"-0.3, 0.05, OPEN_OR_SHORT, 200", "-9.0, 0.05, SUPPLY_LOW, 10"})
  void noGapIsClaimedFromAnOutputThatRests(
      double volts, double sensitivity, Cause cause, double least) {
    Diagnosis diagnosis = Cases.find(Cases.line(Cases.OWN), Cases.seen(volts, sensitivity));
    assertThat(diagnosis.first().cause()).isEqualTo(cause);
    assertThat(diagnosis.gapUncertainty()).isGreaterThan(least);
  }

  /** A gap that is known counts for or against every cause alike. */
  @Test
  void aKnownGapMakesNoHealthyLoopAnOpenOne() {
    Observation seen = Cases.seen(-9.0, 202);
    Observation known =
        new Observation(
            seen.volts(),
            seen.sensitivity(),
            seen.voltsUncertainty(),
            seen.sensitivityUncertainty(),
            OptionalDouble.of(1270),
            Optional.empty(),
            TappingPoint.DRIVER);
    Diagnosis without = Cases.find(Cases.line(Cases.OWN), seen);
    Diagnosis with = Cases.find(Cases.line(Cases.OWN), known);
    for (Cause cause : List.of(Cause.OPEN_OR_SHORT, Cause.SUPPLY_LOW)) {
      assertThat(with.probability(cause)).isLessThan(1.5 * without.probability(cause) + 1e-12);
    }
  }

  /** A larger probe of the same volts, everything in proportion, says the same. */
  @ParameterizedTest
  @CsvSource({"2", "10"})
  void largerProbesAreJudgedInProportion(double larger) {
    Diagnosis small = Cases.find(Baseline.line(1270, -10, 202 / 25.4), Cases.seen(-10, 180));
    Diagnosis large =
        Cases.find(
            Baseline.line(1270 * larger, -10, 202 / 25.4 / larger), Cases.seen(-10, 180 / larger));
    assertThat(large.first().cause()).isEqualTo(Cause.OVER_LENGTH);
    assertThat(large.first().probability()).isCloseTo(small.first().probability(), within(0.01));
    assertThat(large.impliedLength().metres())
        .isCloseTo(small.impliedLength().metres(), within(0.02));
  }

  @Test
  void halfMetresAreLikelierThanWholeOnesBeforeMeasuring() {
    assertThat(WrongLength.halfToWhole()).isCloseTo(1.65, within(0.01));
  }

  /**
   * Signs and sizes of a model of the coil over 4140 with a self-resonant driver, 5 m (own
   * calculation, order of magnitude only): other strengths than above.
   */
  @ParameterizedTest
  @CsvSource({
    "-11.3, 240, UNDER_LENGTH",
    "-10.6, 218, UNDER_LENGTH",
    "-9.4, 184, OVER_LENGTH",
    "-8.9, 172, OVER_LENGTH",
    "-10.0, 234, UNDER_LENGTH",
    "-10.0, 216, UNDER_LENGTH",
    "-10.0, 184, OVER_LENGTH",
    "-10.0, 168, OVER_LENGTH"
  })
  void otherStrengthsComeOutRightToo(double volts, double sensitivity, Cause cause) {
    for (String system : new String[] {"5.0", "9.0"}) {
      loopwright.units.Length length = loopwright.units.Length.ofMetres(system);
      Baseline baseline = Baseline.line(1270, -10, 200.9 / 25.4);
      Diagnosis diagnosis =
          CauseFinder.find(
              Situation.of(
                  length,
                  FittedLengths.usual(length).metres(),
                  baseline,
                  Cases.seen(volts, sensitivity)));
      assertThat(diagnosis.first().cause()).as(system).isEqualTo(cause);
    }
  }
}
