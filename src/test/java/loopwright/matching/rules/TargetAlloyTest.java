package loopwright.matching.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import loopwright.matching.Alloys;
import loopwright.matching.Calibration;
import loopwright.matching.Fact;
import loopwright.matching.Families;
import loopwright.matching.FamilyView;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.Rule;
import loopwright.matching.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TargetAlloyTest extends RuleContract {

  @Override
  Rule rule() {
    return new TargetAlloy();
  }

  private static LoopView.Builder loop(String made, String shaft) {
    Families families =
        Families.of(List.of(FamilyView.of("Q").targetAlloy(made).build()), List.of());
    return Loops.ofFamily("Q", "1.0", "4.0", "5.0")
        .families(families)
        .holding(Set.of(Fact.SHAFT_ALLOY))
        .alloys(Places.ALLOYS)
        .place(Places.ofAlloy(shaft));
  }

  private static Calibration on(String alloy, String... changed) {
    return new Calibration(
        LocalDate.parse("2025-11-02"),
        Calibration.Outcome.DOES_NOT_CONFORM,
        List.of(changed),
        alloy,
        9.8);
  }

  @ParameterizedTest(name = "made for {0}, shaft of {1}")
  @CsvSource({
    "4140, 4140, MATCHES",
    "4140, 42CrMo4, MATCHES",
    "4140, 42 crmo 4, MATCHES",
    "4140, 304, ATTENTION",
    "4140, 6061, REFUSED",
    "6061, 304, REFUSED",
    "4140, X-17, ATTENTION",
    "4140, '', UNKNOWN",
    "'', 4140, UNKNOWN",
    "4140, 4142, UNKNOWN",
    "unheard of, unheard of, MATCHES",
  })
  void truthTable(String made, String shaft, Verdict verdict) {
    assertThat(rule().judge(loop(made, shaft).build()).verdict()).isEqualTo(verdict);
  }

  /** 250 over 200 mV/mil is a quarter more (vibration handbooks, from memory). */
  @Test
  void saysHowFarTheSlopeShifts() {
    Finding finding = rule().judge(loop("4140", "304").build());
    assertThat(finding.message())
        .isEqualTo(
            "The family is made for 4140 (low-alloy steel), the shaft is of 304 (austenitic"
                + " stainless steel).");
    assertThat(finding.expect())
        .isEqualTo(
            "Expect a slope of about +25 % against the nominal one (vibration handbooks, from"
                + " memory).");
  }

  /** Back from stainless to low-alloy steel: 200 over 250 is a fifth less. */
  @Test
  void theShiftIsAgainstTheAlloyTheFamilyIsMadeFor() {
    assertThat(rule().judge(loop("304", "4140").build()).expect()).contains("−20 %");
  }

  @Test
  void aCurveTakenOnTheShaftsAlloyMatches() {
    assertThat(rule().judge(loop("4140", "304").calibration(on("316")).build()).verdict())
        .isEqualTo(Verdict.MATCHES);
    assertThat(rule().judge(loop("4140", "6061").calibration(on("6061")).build()).verdict())
        .isEqualTo(Verdict.MATCHES);
  }

  @Test
  void aCurveOnAnotherAlloyOrOfOtherPartsDoesNot() {
    assertThat(rule().judge(loop("4140", "304").calibration(on("4140")).build()).verdict())
        .isEqualTo(Verdict.ATTENTION);
    assertThat(
            rule()
                .judge(loop("4140", "304").calibration(on("304", "probe PR-1")).build())
                .verdict())
        .isEqualTo(Verdict.ATTENTION);
  }

  @Test
  void proposesTheNearestListedAlloy() {
    assertThat(rule().judge(loop("4140", "4142").build()).remedy()).contains("'4140'?");
  }

  @Test
  void doesNotJudgeWithoutAPlaceForTheAlloyOrAList() {
    assertThat(rule().judge(loop("4140", "6061").holding(Set.of()).build()).verdict())
        .isEqualTo(Verdict.NOT_JUDGED);
    assertThat(rule().judge(loop("4140", "6061").alloys(Alloys.NOT_GIVEN).build()).verdict())
        .isEqualTo(Verdict.NOT_JUDGED);
  }
}
