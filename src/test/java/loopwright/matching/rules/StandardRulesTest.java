package loopwright.matching.rules;

import static loopwright.matching.rules.Loops.loop;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Comparator;
import java.util.Set;
import loopwright.matching.Fact;
import loopwright.matching.Finding;
import loopwright.matching.Judgement;
import loopwright.matching.LoopView;
import loopwright.matching.Verdict;
import loopwright.units.Length;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.domains.Domain;
import org.junit.jupiter.api.Test;

class StandardRulesTest {

  @Test
  void aBalancedLoopWithoutFamilyMatches() {
    Judgement judgement =
        StandardRules.book()
            .judge(loop("1.0", "4.0", "5.0").holding(Set.of(Fact.PLACEMENTS)).build());
    assertThat(judgement.verdict()).isEqualTo(Verdict.MATCHES);
    assertThat(judgement.balance()).isEqualTo(Length.ZERO);
    assertThat(judgement.findings())
        .filteredOn(finding -> finding.verdict() == Verdict.NOT_JUDGED)
        .extracting(finding -> finding.rule().name())
        .contains("same family", "lengths on offer");
  }

  @Property(tries = 500)
  @Domain(LoopViews.class)
  void theVerdictIsTheWorstFinding(@ForAll LoopView loop) {
    Judgement judgement = StandardRules.book().judge(loop);
    assertThat(judgement.findings()).hasSameSizeAs(StandardRules.book().rules());
    assertThat(judgement.verdict())
        .isEqualTo(Verdict.worst(judgement.findings().stream().map(Finding::verdict).toList()));
    assertThat(judgement.findings()).isSortedAccordingTo(Comparator.comparing(Finding::verdict));
  }

  @Property(tries = 500)
  @Domain(LoopViews.class)
  void aLoopWithAnUnknownLengthNeverMatches(@ForAll LoopView loop) {
    Judgement judgement = StandardRules.book().judge(loop);
    if (LoopViews.lacksALength(loop) && !loop.isOutsideTheRules()) {
      assertThat(judgement.balance()).isNull();
      assertThat(judgement.verdict()).isIn(Verdict.UNKNOWN, Verdict.REFUSED);
    }
  }
}
