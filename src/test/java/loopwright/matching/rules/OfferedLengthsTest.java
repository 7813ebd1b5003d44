package loopwright.matching.rules;

import static loopwright.matching.rules.Loops.FAMILIES;
import static loopwright.matching.rules.Loops.cable;
import static loopwright.matching.rules.Loops.driver;
import static loopwright.matching.rules.Loops.loop;
import static loopwright.matching.rules.Loops.ofFamily;
import static loopwright.matching.rules.Loops.probe;
import static loopwright.matching.rules.Loops.slot;
import static loopwright.matching.rules.Loops.weak;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loopwright.matching.Families;
import loopwright.matching.FamilyView;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.Rule;
import loopwright.matching.Verdict;
import loopwright.units.Length;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.domains.Domain;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OfferedLengthsTest extends RuleContract {

  @Override
  Rule rule() {
    return new OfferedLengths();
  }

  @ParameterizedTest(name = "{0}: {1} + {2} on {3}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          R8  | 1.0  | 4.0  | 5.0 | MATCHES    | Every length is one that the family offers.
          R8  | 5.0  | none | 5.0 | MATCHES    | Every length
          R8  | 1.0  | 4.2  | 5.0 | REFUSED    | Extension cable XC-1 (4.2 m) is not a length that family R8 offers
          R8  | 1.2  | 4.0  | 5.0 | REFUSED    | Probe PR-1 (1.2 m)
          R8  | 1.0  | 4.0  | 9.0 | REFUSED    | Driver DV-1 (9.0 m)
          R8  | 1.05 | 4.0  | 5.0 | MATCHES    | Every length
          R8  | 1.06 | 4.0  | 5.0 | REFUSED    | Probe PR-1
          R8  | 1.0  | ''   | 5.0 | UNKNOWN    | The length of extension cable XC-1 is not known.
          R88 | 1.0  | 4.0  | 5.0 | UNKNOWN    | What lengths family 'R88' offers is not known
          """)
  void judges(
      String family, String lead, String cable, String system, Verdict verdict, String says) {
    Finding finding = rule().judge(ofFamily(family, lead, cable, system).build());
    assertThat(finding.verdict()).isEqualTo(verdict);
    assertThat(finding.message()).contains(says);
  }

  @Test
  void namesWhatIsOnOffer() {
    assertThat(rule().judge(ofFamily("R8", "1.0", "4.2", "5.0").build()).remedy())
        .isEqualTo("It offers 3.0, 3.5, 4.0 and 4.5 m.");
  }

  @Test
  void doesNotJudgeWithoutAFamilyOrAListOrLengthsInIt() {
    assertThat(rule().judge(loop("1.2", "4.2", "5.0").families(FAMILIES).build()).verdict())
        .isEqualTo(Verdict.NOT_JUDGED);
    assertThat(
            rule()
                .judge(ofFamily("R8", "1.2", "4.2", "5").families(Families.NOT_GIVEN).build())
                .message())
        .isEqualTo("No list of families is given to judge by.");
    Families bare = Families.of(List.of(FamilyView.of("R8").build()), List.of());
    assertThat(rule().judge(ofFamily("R8", "1.2", "4.2", "5").families(bare).build()).verdict())
        .isEqualTo(Verdict.NOT_JUDGED);
  }

  @Test
  void aLengthOnOfferWithWeakEvidenceIsUnknown() {
    LoopView loop =
        loop(
                probe("1.0").family("R8"),
                slot(cable("").family("R8").length(weak("4.0"))),
                driver("5.0").family("R8"))
            .families(FAMILIES)
            .build();
    Finding finding = rule().judge(loop);
    assertThat(finding.verdict()).isEqualTo(Verdict.UNKNOWN);
    assertThat(finding.remedy()).contains("extension cable XC-1: 4.0 m, assumed");
  }

  /**
   * 0.8–1.3 m for a nominal 1 m lead, 3.6–4.5 m for a nominal 4 m cable: API Std 670, from memory.
   */
  @ParameterizedTest(name = "lead measures {0}, cable {1}")
  @CsvSource({
    "0.8, 3.6, NOT_JUDGED",
    "1.3, 4.5, NOT_JUDGED",
    "0.79, 4.0, ATTENTION",
    "1.31, 4.0, ATTENTION",
    "1.0, 3.59, ATTENTION",
    "1.0, 4.51, ATTENTION",
  })
  void aPhysicalLengthFarFromNominalIsAttentionAndNoMore(
      String lead, String cable, Verdict verdict) {
    LoopView loop =
        loop(
                probe("1.0").measuredLength(Length.ofMetres(lead)),
                slot(cable("4.0").measuredLength(Length.ofMetres(cable))),
                driver("5.0"))
            .build();
    assertThat(rule().judge(loop).verdict()).isEqualTo(verdict);
  }

  @Property(tries = 500)
  @Domain(LoopViews.class)
  void anUnknownLengthThatIsJudgedNeverMatches(@ForAll LoopView loop) {
    boolean asked =
        loop.parts().stream()
            .filter(part -> part.length() == null)
            .anyMatch(
                part ->
                    loop.familyOf(part)
                        .filter(family -> !family.lengthsOf(part.kind()).isEmpty())
                        .isPresent());
    if (asked) {
      assertThat(rule().judge(loop).verdict()).isIn(Verdict.UNKNOWN, Verdict.REFUSED);
    }
  }
}
