package loopwright.cli;

import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import loopwright.matching.RuleBook;
import loopwright.matching.Verdict;
import loopwright.registerfile.JudgedLoop;
import loopwright.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * What {@code check --json} prints.
 *
 * @param loops in the order of files and rows, made as they are printed
 * @param rules on what each rests
 */
@JsonPropertyOrder({"loops", "summary", "rules"})
record CheckDocument(Iterable<Loop> loops, Summary summary, List<Basis> rules) {

  /**
   * One loop.
   *
   * @param lengthBalanceMetres nominal lengths fitted − the driver's system length; null when not
   *     known
   * @param findings one for each rule, worst first
   */
  record Loop(
      String tag,
      String verdict,
      @Nullable BigDecimal lengthBalanceMetres,
      List<Finding> findings,
      String file,
      int row) {}

  /** What one rule says. */
  record Finding(String rule, String verdict, String message) {}

  /** How many loops there are, and how many of each verdict. */
  record Summary(long loops, long refused, long unknown, long attention, long matches) {}

  /** On what a rule rests. */
  record Basis(String rule, String basis) {}

  static CheckDocument of(List<JudgedLoop> judged, RuleBook book) {
    return new CheckDocument(
        () -> judged.stream().map(CheckDocument::loop).iterator(),
        summary(judged),
        book.rules().stream().map(rule -> new Basis(rule.name(), rule.basis())).toList());
  }

  private static Loop loop(JudgedLoop judged) {
    Length balance = judged.judgement().balance();
    return new Loop(
        judged.judgement().tag(),
        judged.judgement().verdict().word(),
        balance == null ? null : balance.metres(),
        judged.judgement().findings().stream().map(CheckDocument::finding).toList(),
        judged.file(),
        judged.row());
  }

  private static Finding finding(loopwright.matching.Finding finding) {
    return new Finding(finding.rule().name(), finding.verdict().word(), finding.sentences());
  }

  static Summary summary(List<JudgedLoop> judged) {
    Map<Verdict, Long> counts =
        judged.stream()
            .collect(Collectors.groupingBy(l -> l.judgement().verdict(), Collectors.counting()));
    return new Summary(
        judged.size(),
        counts.getOrDefault(Verdict.REFUSED, 0L),
        counts.getOrDefault(Verdict.UNKNOWN, 0L),
        counts.getOrDefault(Verdict.ATTENTION, 0L),
        counts.getOrDefault(Verdict.MATCHES, 0L));
  }
}
