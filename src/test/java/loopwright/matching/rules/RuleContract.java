package loopwright.matching.rules;

import static org.assertj.core.api.Assertions.assertThat;

import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.Rule;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.domains.Domain;

/** What every rule owes to every legal view, sensible or not. */
abstract class RuleContract {

  abstract Rule rule();

  /** Whether it matters to the rule which part of the path comes first. */
  boolean mindsTheOrder() {
    return false;
  }

  @Property(tries = 500, shrinking = ShrinkingMode.BOUNDED, edgeCases = EdgeCasesMode.NONE)
  @Domain(LoopViews.class)
  void judgesEveryLegalViewAndSaysWhy(@ForAll LoopView loop) {
    Finding finding = rule().judge(loop);
    assertThat(finding.rule()).isEqualTo(rule());
    assertThat(finding.basis()).isNotBlank();
    assertThat(finding.message()).endsWith(".").doesNotContain("null").doesNotContain("Optional");
    assertThat(finding.remedy()).doesNotContain("null").doesNotContain("Optional");
    assertThat(finding.message().charAt(0)).matches(c -> !Character.isLowerCase(c));
    assertThat(rule().judge(loop)).as("asked again").isEqualTo(finding);
  }

  @Property(tries = 300, shrinking = ShrinkingMode.BOUNDED, edgeCases = EdgeCasesMode.NONE)
  @Domain(LoopViews.class)
  void theOrderOfThePathDoesNotChangeTheVerdict(@ForAll LoopView loop) {
    if (mindsTheOrder()) {
      return;
    }
    LoopView turned =
        new LoopView(
            loop.tag(),
            loop.probe(),
            LoopViews.reversed(loop.path()),
            loop.driver(),
            loop.families(),
            loop.facts(),
            loop.calibration(),
            loop.barrier(),
            loop.place(),
            loop.alloys(),
            loop.disputed());
    assertThat(rule().judge(turned).verdict()).isEqualTo(rule().judge(loop).verdict());
  }

  @org.junit.jupiter.api.Test
  void hasAShortLowerCaseNameAndABasis() {
    assertThat(rule().name()).isLowerCase().hasSizeLessThan(30);
    assertThat(rule().basis()).endsWith(".");
  }
}
