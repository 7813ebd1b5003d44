package loopwright.matching.rules;

import static loopwright.matching.rules.Loops.cable;
import static loopwright.matching.rules.Loops.driver;
import static loopwright.matching.rules.Loops.loop;
import static loopwright.matching.rules.Loops.part;
import static loopwright.matching.rules.Loops.probe;
import static loopwright.matching.rules.Loops.slot;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import loopwright.matching.Elsewhere;
import loopwright.matching.Fact;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.PartKind;
import loopwright.matching.PartView;
import loopwright.matching.Rule;
import loopwright.matching.Verdict;
import org.junit.jupiter.api.Test;

class FittedOnceTest extends RuleContract {
  private static final Set<Fact> HELD = Set.of(Fact.PLACEMENTS);

  @Override
  Rule rule() {
    return new FittedOnce();
  }

  private static LoopView.Builder of(PartView.Builder cable) {
    return loop(probe("1.0"), slot(cable), driver("5.0")).holding(HELD);
  }

  private static List<Elsewhere> at(String... tags) {
    return Stream.of(tags).map(tag -> new Elsewhere(tag, "")).toList();
  }

  @Test
  void matchesWhatStandsNowhereElse() {
    assertThat(rule().judge(of(cable("4.0")).build()).verdict()).isEqualTo(Verdict.MATCHES);
  }

  @Test
  void refusesAPartThatStandsElsewhereAndNamesThePlace() {
    PartView.Builder claimed =
        cable("4.0").elsewhere(List.of(new Elsewhere("T-2", "shop.csv, row 7")));
    Finding finding = rule().judge(of(claimed).build());
    assertThat(finding.verdict()).isEqualTo(Verdict.REFUSED);
    assertThat(finding.message())
        .isEqualTo("Extension cable XC-1 also stands at T-2 (shop.csv, row 7).");
  }

  @Test
  void namesAtMostThreePlaces() {
    assertThat(rule().judge(of(cable("4.0").elsewhere(at("A", "B", "C", "D"))).build()).message())
        .isEqualTo("Extension cable XC-1 also stands at A, B, C and more places.");
  }

  @Test
  void asksAttentionForAPartThatWasClaimedHereAndElsewhereForOneMoment() {
    Finding finding =
        rule().judge(of(cable("4.0")).disputed(List.of("Claimed here and at T-2.")).build());
    assertThat(finding.verdict()).isEqualTo(Verdict.ATTENTION);
    assertThat(finding.message()).isEqualTo("Claimed here and at T-2.");
    assertThat(finding.remedy()).contains("Read the serial at both points");
  }

  @Test
  void seesAPartTwiceInOneLoop() {
    assertThat(rule().judge(of(cable("4.0").elsewhere(at("T-1"))).build()).message())
        .isEqualTo("Extension cable XC-1 stands twice in this loop.");
  }

  @Test
  void doesNotJudgeWhenTheSourceCannotSayOrNothingIsIdentified() {
    LoopView silent = of(cable("4.0").elsewhere(at("T-2"))).holding(Set.of()).build();
    assertThat(rule().judge(silent).verdict()).isEqualTo(Verdict.NOT_JUDGED);
    LoopView nameless =
        loop(
                part(PartKind.PROBE, "", "1.0"),
                slot(part(PartKind.CABLE, "", "4.0")),
                part(PartKind.DRIVER, "", "5.0"))
            .holding(HELD)
            .build();
    assertThat(rule().judge(nameless).verdict()).isEqualTo(Verdict.NOT_JUDGED);
  }
}
