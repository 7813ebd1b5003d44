package loopwright.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.matching.Finding;
import loopwright.matching.Rule;
import loopwright.matching.RuleBook;
import loopwright.matching.Verdict;
import loopwright.registerfile.JudgedLoop;
import loopwright.sheet.Cells;

/** What {@code check} prints for people: one line a finding, worst first, then a summary. */
final class CheckLines {
  /** The rule that speaks for a loop that matches. */
  private static final String SPOKESMAN = "length balance";

  private CheckLines() {}

  /**
   * @param all findings that match or are not judged, too
   */
  static void print(PrintWriter out, List<JudgedLoop> loops, RuleBook book, boolean all) {
    for (Verdict verdict : Verdict.values()) {
      loops.forEach(loop -> print(out, loop, verdict, all));
    }
    out.println();
    out.println(summary(loops));
    String never =
        book.rules().stream()
            .map(Rule::name)
            .filter(rule -> findings(loops, rule).allMatch(CheckLines::isNotJudged))
            .collect(Collectors.joining(", "));
    if (!never.isEmpty()) {
      out.println("Not judged in any loop, for want of facts: " + never + ".");
    }
  }

  private static void print(PrintWriter out, JudgedLoop loop, Verdict verdict, boolean all) {
    loop.judgement().findings().stream()
        .filter(finding -> finding.verdict() == verdict)
        .filter(finding -> all || isTold(loop, finding))
        .forEach(finding -> out.println(line(loop, finding)));
  }

  private static boolean isTold(JudgedLoop loop, Finding finding) {
    boolean speaksForAll =
        loop.judgement().verdict() == Verdict.MATCHES && finding.rule().name().equals(SPOKESMAN);
    return finding.verdict().isWorseThan(Verdict.MATCHES) || speaksForAll;
  }

  private static String line(JudgedLoop loop, Finding finding) {
    return "%-10s  %s  %s: %s"
        .formatted(
            finding.verdict().word(),
            Cells.oneLine(loop.judgement().tag()),
            finding.rule().name(),
            Cells.oneLine(finding.sentences()));
  }

  private static String summary(List<JudgedLoop> loops) {
    CheckDocument.Summary summary = CheckDocument.summary(loops);
    return "%s %s: %s refused, %s unknown, %s attention, %s matches."
        .formatted(
            summary.loops(),
            summary.loops() == 1 ? "loop" : "loops",
            summary.refused(),
            summary.unknown(),
            summary.attention(),
            summary.matches());
  }

  private static Stream<Finding> findings(List<JudgedLoop> loops, String rule) {
    return loops.stream()
        .flatMap(loop -> loop.judgement().findings().stream())
        .filter(finding -> finding.rule().name().equals(rule));
  }

  private static boolean isNotJudged(Finding finding) {
    return finding.verdict() == Verdict.NOT_JUDGED;
  }
}
