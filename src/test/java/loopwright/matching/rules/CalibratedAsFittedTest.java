package loopwright.matching.rules;

import static loopwright.matching.rules.Loops.loop;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import loopwright.matching.Calibration;
import loopwright.matching.Calibration.Outcome;
import loopwright.matching.Fact;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.Rule;
import loopwright.matching.Slot;
import loopwright.matching.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CalibratedAsFittedTest extends RuleContract {

  @Override
  Rule rule() {
    return new CalibratedAsFitted();
  }

  private static LoopView.Builder held() {
    return loop("1.0", "4.0", "5.0").holding(Set.of(Fact.CALIBRATION));
  }

  private static Calibration calibration(Outcome outcome, String... changed) {
    return new Calibration(LocalDate.parse("2025-11-02"), outcome, List.of(changed));
  }

  @ParameterizedTest
  @CsvSource({
    "CONFORMS, MATCHES, and conforms",
    "DOES_NOT_CONFORM, ATTENTION, does not conform",
    "NO_CURVE, ATTENTION, has no curve",
  })
  void judgesTheLatestAsLeft(Outcome outcome, Verdict verdict, String says) {
    Finding finding = rule().judge(held().calibration(calibration(outcome)).build());
    assertThat(finding.verdict()).isEqualTo(verdict);
    assertThat(finding.message()).contains("of 2025-11-02").contains(says);
  }

  @Test
  void anExchangeVoidsTheCurve() {
    Finding finding =
        rule()
            .judge(
                held().calibration(calibration(Outcome.CONFORMS, "extension cable XC-1")).build());
    assertThat(finding.verdict()).isEqualTo(Verdict.ATTENTION);
    assertThat(finding.message()).contains("taken without extension cable XC-1");
  }

  @Test
  void oneTakenOnTheBenchCountsUnlessSomethingOfThisLoopIsOther() {
    Finding good = rule().judge(held().calibration(bench()).build());
    assertThat(good.verdict()).isEqualTo(Verdict.MATCHES);
    assertThat(good.message()).contains("before they were fitted here");
    Finding other =
        rule().judge(held().calibration(bench("its target was of A, the shaft is of B")).build());
    assertThat(other.verdict()).isEqualTo(Verdict.ATTENTION);
    assertThat(other.message()).contains("exactly these parts, but its target was of A");
    assertThat(other.blocksReturnToService()).isTrue();
  }

  private static Calibration bench(String... reservations) {
    return new Calibration(
        LocalDate.parse("2025-11-02"),
        Outcome.CONFORMS,
        List.of(),
        "A",
        7.87,
        true,
        List.of(reservations));
  }

  @Test
  void noCalibrationIsAttention() {
    assertThat(rule().judge(held().build()).verdict()).isEqualTo(Verdict.ATTENTION);
  }

  @Test
  void cannotBeHeldAgainstUnknownParts() {
    LoopView loop =
        held()
            .driver(Slot.unknown("displaced by survey"))
            .calibration(calibration(Outcome.CONFORMS))
            .build();
    assertThat(rule().judge(loop).verdict()).isEqualTo(Verdict.UNKNOWN);
  }

  @Test
  void doesNotJudgeWithoutCalibrations() {
    assertThat(rule().judge(loop("1.0", "4.0", "5.0").build()).verdict())
        .isEqualTo(Verdict.NOT_JUDGED);
  }

  @Test
  void neverBlocksAssemblyButAlwaysReturnToService() {
    Finding finding = rule().judge(held().build());
    assertThat(finding.blocksAssembly()).isFalse();
    assertThat(finding.blocksReturnToService()).isTrue();
    Finding good = rule().judge(held().calibration(calibration(Outcome.CONFORMS)).build());
    assertThat(good.blocksReturnToService()).isFalse();
  }
}
