package loopwright.matching;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import loopwright.matching.rules.StandardRules;
import org.junit.jupiter.api.Test;

/** What a concession changes in a judgement, and what it never changes. */
class AllowanceTest {
  private static final Allowance LEAVE =
      new Allowance("CN-7", Set.of("length balance"), "until Monday; meanwhile: watched");

  private static Judgement judged(Verdict balance, Verdict family) {
    return new Judgement(
        "V-1",
        List.of(finding(rule("length balance"), balance), finding(rule("same family"), family)),
        null);
  }

  private static Rule rule(String name) {
    return StandardRules.book().rules().stream()
        .filter(rule -> rule.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  private static Finding finding(Rule rule, Verdict verdict) {
    return new Finding(rule, verdict, "It is so.", "Fit another.", "common practice, no source");
  }

  @Test
  void whatIsRefusedAndNamedIsAttentionByItsLeave() {
    Judgement under = judged(Verdict.REFUSED, Verdict.MATCHES).under(List.of(LEAVE));
    assertThat(under.verdict()).isEqualTo(Verdict.ATTENTION);
    assertThat(under.againstAssembly()).isEmpty();
    assertThat(under.findings().get(0).concession()).isEqualTo("CN-7");
    assertThat(under.findings().get(0).message())
        .isEqualTo("It is so. Left so under concession CN-7: until Monday; meanwhile: watched");
  }

  @Test
  void whatIsUnknownIsNeverCovered() {
    Judgement under = judged(Verdict.UNKNOWN, Verdict.MATCHES).under(List.of(LEAVE));
    assertThat(under.verdict()).isEqualTo(Verdict.UNKNOWN);
    assertThat(under.findings().get(0).concession()).isEmpty();
  }

  @Test
  void whatIsNotNamedStaysRefusedAndComesFirst() {
    Judgement under = judged(Verdict.REFUSED, Verdict.REFUSED).under(List.of(LEAVE));
    assertThat(under.verdict()).isEqualTo(Verdict.REFUSED);
    assertThat(under.findings()).extracting(f -> f.rule().name()).first().isEqualTo("same family");
    assertThat(under.againstAssembly()).hasSize(1);
  }

  @Test
  void whatMatchesIsNotMadeWorse() {
    assertThat(judged(Verdict.MATCHES, Verdict.MATCHES).under(List.of(LEAVE)).verdict())
        .isEqualTo(Verdict.MATCHES);
  }
}
