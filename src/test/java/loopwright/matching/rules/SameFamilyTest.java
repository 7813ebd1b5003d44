package loopwright.matching.rules;

import static loopwright.matching.rules.Loops.FAMILIES;
import static loopwright.matching.rules.Loops.cable;
import static loopwright.matching.rules.Loops.driver;
import static loopwright.matching.rules.Loops.loop;
import static loopwright.matching.rules.Loops.part;
import static loopwright.matching.rules.Loops.probe;
import static loopwright.matching.rules.Loops.slot;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loopwright.matching.Families;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.PartKind;
import loopwright.matching.Rule;
import loopwright.matching.Verdict;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SameFamilyTest extends RuleContract {

  @Override
  Rule rule() {
    return new SameFamily();
  }

  private static LoopView.Builder of(
      @Nullable String probe, @Nullable String cable, @Nullable String driver) {
    return loop(
        probe("1.0").family(probe), slot(cable("4.0").family(cable)), driver("5.0").family(driver));
  }

  @ParameterizedTest(name = "{0} {1} {2}, listed: {3}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # probe, cable, driver, list given
          R8  | R8 | R8  | true  | MATCHES    | Family R8 throughout.
          R8  | r8 | R8  | true  | MATCHES    | Family R8 throughout.
          R8  | R8 | R8  | false | NOT_JUDGED | No list of families is given
              |    |     | true  | NOT_JUDGED | No family is recorded.
              |    |     | false | NOT_JUDGED | No family is recorded.
          R9  | R8 | R8  | true  | REFUSED    | Probe PR-1 is of family R9, extension cable XC-1 of family R8.
          R9  | R8 | R8  | false | REFUSED    | Probe PR-1 is of family R9
          R8  | R8 | N5  | true  | MATCHES    | R8 and N5 are entered as interchangeable by A. Fitter.
          R9  | R8 | N5  | true  | REFUSED    | of family R9
          R8  | R8 |     | true  | UNKNOWN    | The family of driver DV-1 is not recorded.
          R8  | R9 |     | true  | REFUSED    | of family R9
          R88 | R88| R88 | true  | UNKNOWN    | Family 'R88' is not in the list of families. Did you mean 'R8'?
          """)
  void judges(
      @Nullable String probe,
      @Nullable String cable,
      @Nullable String driver,
      boolean listed,
      Verdict verdict,
      String says) {
    Families families = listed ? FAMILIES : Families.NOT_GIVEN;
    Finding finding = rule().judge(of(probe, cable, driver).families(families).build());
    assertThat(finding.verdict()).isEqualTo(verdict);
    assertThat(finding.sentences()).contains(says);
  }

  @Test
  void anAdapterNeedsNoFamily() {
    LoopView.Builder loop =
        of("R8", "R8", "R8")
            .path(
                List.of(
                    slot(cable("4.0").family("R8")), slot(part(PartKind.ADAPTER, "AD-1", "0.1"))));
    assertThat(rule().judge(loop.families(FAMILIES).build()).verdict()).isEqualTo(Verdict.MATCHES);
  }
}
