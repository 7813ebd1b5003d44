package loopwright.matching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import loopwright.units.Length;
import org.junit.jupiter.api.Test;

/** The mechanism alone, with rules made up for it: any rule can join without changing it. */
class RuleBookTest {
  private final LoopView loop = LoopView.at("T-1").build();

  private record Saying(String name, Verdict verdict, boolean blocksAssembly) implements Rule {
    @Override
    public String basis() {
      return "Made up.";
    }

    @Override
    public boolean attentionBlocksService() {
      return !blocksAssembly;
    }

    @Override
    public Finding judge(LoopView loop) {
      return finding(verdict, "Said.", "Do.");
    }
  }

  private static Saying saying(String name, Verdict verdict) {
    return new Saying(name, verdict, true);
  }

  @Test
  void tellsTheWorstFirstAndOtherwiseInTheOrderOfTheBook() {
    RuleBook book =
        new RuleBook(
            List.of(
                saying("a", Verdict.MATCHES),
                saying("b", Verdict.REFUSED),
                saying("c", Verdict.NOT_JUDGED),
                saying("d", Verdict.REFUSED)));
    Judgement judgement = book.judge(loop);
    assertThat(judgement.findings())
        .extracting(finding -> finding.rule().name())
        .containsExactly("b", "d", "a", "c");
    assertThat(judgement.verdict()).isEqualTo(Verdict.REFUSED);
  }

  @Test
  void aRuleThatDoesNotBlockAssemblyStillBlocksReturnToService() {
    Judgement judgement =
        new RuleBook(
                List.of(
                    new Saying("late", Verdict.ATTENTION, false),
                    saying("look", Verdict.ATTENTION),
                    saying("gap", Verdict.UNKNOWN)))
            .judge(loop);
    assertThat(judgement.againstAssembly()).extracting(f -> f.rule().name()).containsExactly("gap");
    assertThat(judgement.againstReturnToService())
        .extracting(finding -> finding.rule().name())
        .containsExactly("gap", "late");
  }

  @Test
  void anUnknownOfThePointDoesNotRefuseAnAssemblyButKeepsTheLoopFromService() {
    Rule ofThePoint =
        new Rule() {
          @Override
          public String name() {
            return "shaft";
          }

          @Override
          public String basis() {
            return "Made up.";
          }

          @Override
          public boolean blocksAssemblyWhenUnknown() {
            return false;
          }

          @Override
          public Finding judge(LoopView view) {
            return finding(Verdict.UNKNOWN, "Said.");
          }
        };
    Judgement judgement = new RuleBook(List.of(ofThePoint)).judge(loop);
    assertThat(judgement.againstAssembly()).isEmpty();
    assertThat(judgement.againstReturnToService()).hasSize(1);
  }

  @Test
  void refusesTwoRulesOfOneName() {
    List<Rule> twice = List.of(saying("a", Verdict.MATCHES), saying("a", Verdict.REFUSED));
    assertThatThrownBy(() -> new RuleBook(twice)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void judgesNoTransducerOfAnotherKind() {
    LoopView seismic =
        LoopView.at("T-2").probe(Slot.of(PartView.of(PartKind.ACCELEROMETER).build())).build();
    Judgement judgement = new RuleBook(List.of(saying("a", Verdict.REFUSED))).judge(seismic);
    assertThat(judgement.verdict()).isEqualTo(Verdict.NOT_JUDGED);
  }

  @Test
  void aFindingHasWordsAndABasis() {
    assertThatThrownBy(
            () -> new Finding(saying("a", Verdict.MATCHES), Verdict.MATCHES, " ", "", "b"))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void theBalanceIsNullWithoutAProbe() {
    LoopView cableOnly =
        LoopView.at("T-3")
            .probe(Slot.NONE_FITTED)
            .path(
                List.of(
                    Slot.of(
                        PartView.of(PartKind.CABLE).length(KnownLength.readOnPart("5")).build())))
            .driver(
                Slot.of(PartView.of(PartKind.DRIVER).length(KnownLength.readOnPart("5")).build()))
            .build();
    LengthSum sum = LengthSum.of(cableOnly);
    assertThat(sum.balance()).isNull();
    assertThat(sum.known()).isEqualTo(Length.ofMetres("5"));
    assertThat(sum.missing()).containsExactly("a probe");
  }
}
