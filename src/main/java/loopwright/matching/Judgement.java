package loopwright.matching;

import java.util.Comparator;
import java.util.List;
import loopwright.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * What a rule book says of one loop.
 *
 * @param findings one for each rule, worst first, within a verdict in the order of the book
 * @param balance nominal lengths fitted − the driver's system length; null when one is not known
 */
public record Judgement(String tag, List<Finding> findings, @Nullable Length balance) {

  /** The worst finding. */
  public Verdict verdict() {
    return findings.isEmpty() ? Verdict.NOT_JUDGED : findings.get(0).verdict();
  }

  /** The same while these concessions stand: refused findings that they cover are attention. */
  public Judgement under(List<Allowance> allowances) {
    if (allowances.isEmpty()) {
      return this;
    }
    List<Finding> allowed =
        findings.stream()
            .map(finding -> under(allowances, finding))
            .sorted(Comparator.comparing(Finding::verdict))
            .toList();
    return new Judgement(tag, allowed, balance);
  }

  private static Finding under(List<Allowance> allowances, Finding finding) {
    return allowances.stream()
        .filter(allowance -> allowance.covers(finding))
        .findFirst()
        .map(allowance -> allowance.under(finding))
        .orElse(finding);
  }

  /** Why an assembly could not be left so; empty when it could. */
  public List<Finding> againstAssembly() {
    return findings.stream().filter(Finding::blocksAssembly).toList();
  }

  /** Why the loop could not go back to service; empty when it could. */
  public List<Finding> againstReturnToService() {
    return findings.stream().filter(Finding::blocksReturnToService).toList();
  }
}
