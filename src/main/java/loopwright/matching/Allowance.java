package loopwright.matching;

import java.util.Set;

/**
 * A concession that stands: the loop may be left although it breaks the named rules.
 *
 * @param number by which people know it, for instance {@code CN-12}
 * @param rules names of the rules it covers
 * @param terms until when and under which compensating measure, one sentence
 */
public record Allowance(String number, Set<String> rules, String terms) {
  public Allowance {
    rules = Set.copyOf(rules);
  }

  /** It covers what is refused, never what is unknown. */
  boolean covers(Finding finding) {
    return finding.verdict() == Verdict.REFUSED && rules.contains(finding.rule().name());
  }

  /** The finding as it counts while this stands: <em>attention</em>, and by whose leave. */
  Finding under(Finding finding) {
    return new Finding(
        finding.rule(),
        Verdict.ATTENTION,
        finding.message() + " Left so under concession " + number + ": " + terms,
        finding.remedy(),
        finding.expect(),
        finding.basis(),
        number);
  }
}
