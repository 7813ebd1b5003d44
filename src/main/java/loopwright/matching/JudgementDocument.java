package loopwright.matching;

import java.math.BigDecimal;
import java.util.List;
import loopwright.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * A judgement as {@code check --json} prints it and {@code /api/loops} answers it.
 *
 * @param verdict the worst finding's
 * @param lengthBalanceMetres nominal lengths fitted − the driver's system length; null when not
 *     known
 * @param findings one for each rule, worst first
 */
public record JudgementDocument(
    String tag, String verdict, @Nullable BigDecimal lengthBalanceMetres, List<Told> findings) {

  /** What one rule says. */
  public record Told(String rule, String verdict, String message) {}

  /** The document of that judgement. */
  public static JudgementDocument of(Judgement judgement) {
    Length balance = judgement.balance();
    return new JudgementDocument(
        judgement.tag(),
        judgement.verdict().word(),
        balance == null ? null : balance.metres(),
        judgement.findings().stream().map(JudgementDocument::told).toList());
  }

  private static Told told(Finding finding) {
    return new Told(finding.rule().name(), finding.verdict().word(), finding.sentences());
  }
}
