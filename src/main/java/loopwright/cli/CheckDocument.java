package loopwright.cli;

import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import loopwright.matching.JudgementDocument;
import loopwright.matching.RuleBook;
import loopwright.matching.Verdict;
import loopwright.registerfile.JudgedLoop;

/**
 * What {@code check --json} prints.
 *
 * @param loops in the order of files and rows, made as they are printed
 * @param rules on what each rests
 */
@JsonPropertyOrder({"loops", "summary", "rules"})
record CheckDocument(Iterable<Loop> loops, Summary summary, List<Basis> rules) {

  /** One loop, and where it stands. */
  record Loop(@JsonUnwrapped JudgementDocument judgement, String file, int row) {}

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
    return new Loop(JudgementDocument.of(judged.judgement()), judged.file(), judged.row());
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
