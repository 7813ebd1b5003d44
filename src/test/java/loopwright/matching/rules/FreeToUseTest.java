package loopwright.matching.rules;

import static loopwright.matching.rules.Loops.cable;
import static loopwright.matching.rules.Loops.driver;
import static loopwright.matching.rules.Loops.loop;
import static loopwright.matching.rules.Loops.probe;
import static loopwright.matching.rules.Loops.slot;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import loopwright.matching.Fact;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.PartKind;
import loopwright.matching.PartState;
import loopwright.matching.PartView;
import loopwright.matching.Rule;
import loopwright.matching.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FreeToUseTest extends RuleContract {

  @Override
  Rule rule() {
    return new FreeToUse();
  }

  private static LoopView.Builder of(PartView.Builder cable) {
    return loop(probe("1.0"), slot(cable), driver("5.0")).holding(Set.of(Fact.STATE));
  }

  @ParameterizedTest
  @CsvSource({
    "IN_STOCK, MATCHES",
    "FITTED, MATCHES",
    "QUARANTINED, REFUSED",
    "SCRAPPED, REFUSED",
  })
  void judgesTheState(PartState state, Verdict verdict) {
    Finding finding = rule().judge(of(cable("4.0").state(state)).build());
    assertThat(finding.verdict()).isEqualTo(verdict);
    if (verdict == Verdict.REFUSED) {
      assertThat(finding.message()).isEqualTo("Extension cable XC-1 is " + state.word() + ".");
    }
  }

  @Test
  void aPromisedPartIsAttention() {
    Finding finding = rule().judge(of(cable("4.0").promisedTo("pack 12")).build());
    assertThat(finding.verdict()).isEqualTo(Verdict.ATTENTION);
    assertThat(finding.message()).isEqualTo("Extension cable XC-1 is promised to pack 12.");
  }

  @Test
  void aPartOutOfAKitIsAttention() {
    PartView alone = cable("4.0").build().keptWith("kit Pump B (KIT-7) with driver D-1");
    LoopView loop =
        loop("1.0", "4.0", "5.0")
            .path(java.util.List.of(new loopwright.matching.Slot.Fitted(alone)))
            .holding(Set.of(Fact.STATE))
            .build();
    Finding finding = rule().judge(loop);
    assertThat(finding.verdict()).isEqualTo(Verdict.ATTENTION);
    assertThat(finding.message())
        .isEqualTo("Extension cable XC-1 belongs to kit Pump B (KIT-7) with driver D-1.");
    assertThat(finding.blocksAssembly()).isFalse();
  }

  @Test
  void theBarrierHasToBeFreeToo() {
    LoopView loop =
        of(cable("4.0"))
            .barrier(slot(Loops.part(PartKind.BARRIER, "BR-1", "").state(PartState.QUARANTINED)))
            .build();
    assertThat(rule().judge(loop).message()).isEqualTo("Barrier BR-1 is quarantined.");
  }

  @Test
  void nothingToJudgeIsNotJudged() {
    LoopView loop = LoopView.at("T-1").holding(Set.of(Fact.STATE)).build();
    assertThat(rule().judge(loop).verdict()).isEqualTo(Verdict.NOT_JUDGED);
  }

  @Test
  void doesNotJudgeWithoutStates() {
    LoopView loop = of(cable("4.0").state(PartState.SCRAPPED)).holding(Set.of()).build();
    assertThat(rule().judge(loop).verdict()).isEqualTo(Verdict.NOT_JUDGED);
  }
}
