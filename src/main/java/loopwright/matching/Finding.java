package loopwright.matching;

/**
 * What one rule says of one loop.
 *
 * @param message whole sentences
 * @param remedy what to fit or to find out instead, whole sentences; empty when nothing is asked
 * @param basis on what it rests, with the mark of its source
 * @param concession number of the concession by whose leave it counts as no worse than
 *     <em>attention</em>; empty where none covers it
 */
public record Finding(
    Rule rule, Verdict verdict, String message, String remedy, String basis, String concession) {

  /** What a rule says; no concession is thought of. */
  public Finding(Rule rule, Verdict verdict, String message, String remedy, String basis) {
    this(rule, verdict, message, remedy, basis, "");
  }

  /** A finding without a sentence or a basis would be no finding. */
  public Finding {
    if (message.isBlank() || basis.isBlank()) {
      throw new IllegalArgumentException("A finding has a message and a basis.");
    }
  }

  /** Message and remedy together. */
  public String sentences() {
    return remedy.isEmpty() ? message : message + " " + remedy;
  }

  /** Whether an assembly that is to be left so would be refused for it. */
  public boolean blocksAssembly() {
    return rule.blocksAssembly() && (verdict == Verdict.REFUSED || verdict == Verdict.UNKNOWN);
  }

  /**
   * Whether the loop may not go back to service for it. A rule that does not block assembly blocks
   * here as soon as it is not satisfied: its findings are no worse than <em>attention</em>.
   */
  public boolean blocksReturnToService() {
    return rule.blocksReturnToService()
        && (verdict == Verdict.REFUSED
            || verdict == Verdict.UNKNOWN
            || !rule.blocksAssembly() && verdict == Verdict.ATTENTION);
  }
}
