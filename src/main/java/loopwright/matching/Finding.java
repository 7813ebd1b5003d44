package loopwright.matching;

import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What one rule says of one loop.
 *
 * @param message whole sentences
 * @param remedy what to fit or to find out instead, whole sentences; empty when nothing is asked
 * @param expect what to expect while it stays so, whole sentences; empty when nothing is known
 * @param basis on what it rests, with the mark of its source
 * @param concession number of the concession by whose leave it counts as no worse than
 *     <em>attention</em>; empty where none covers it
 */
public record Finding(
    Rule rule,
    Verdict verdict,
    String message,
    String remedy,
    String expect,
    String basis,
    String concession) {

  /** What a rule says; no concession is thought of, and nothing in particular is expected. */
  public Finding(Rule rule, Verdict verdict, String message, String remedy, String basis) {
    this(rule, verdict, message, remedy, "", basis, "");
  }

  /** A finding without a sentence or a basis would be no finding. */
  public Finding {
    if (message.isBlank() || basis.isBlank()) {
      throw new IllegalArgumentException("A finding has a message and a basis.");
    }
  }

  /** Message, remedy and what to expect together. */
  public String sentences() {
    return Stream.of(message, remedy, expect)
        .filter(sentence -> !sentence.isEmpty())
        .collect(Collectors.joining(" "));
  }

  public Finding expecting(String sentences) {
    return new Finding(rule, verdict, message, remedy, sentences, basis, concession);
  }

  /** Whether an assembly that is to be left so would be refused for it. */
  public boolean blocksAssembly() {
    return rule.blocksAssembly()
        && (verdict == Verdict.REFUSED
            || verdict == Verdict.UNKNOWN && rule.blocksAssemblyWhenUnknown());
  }

  /**
   * Whether the loop may not go back to service for it. A rule that has to be satisfied blocks here
   * as soon as it asks for <em>attention</em>.
   */
  public boolean blocksReturnToService() {
    return rule.blocksReturnToService()
        && (verdict == Verdict.REFUSED
            || verdict == Verdict.UNKNOWN
            || rule.attentionBlocksService() && verdict == Verdict.ATTENTION);
  }
}
