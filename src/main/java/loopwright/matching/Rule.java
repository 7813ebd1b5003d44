package loopwright.matching;

/**
 * One thing that is judged when components meet. Implementations are stateless records, so that two
 * of a kind are equal; they never throw on a legal view.
 */
public interface Rule {

  /** Short, lower case, unique in a rule book: {@code length balance}. */
  String name();

  /** On what the rule rests, with the mark of its source. */
  String basis();

  Finding judge(LoopView loop);

  /** Whether an assembly that this rule refuses, or can't judge for a missing fact, is refused. */
  default boolean blocksAssembly() {
    return true;
  }

  /**
   * Whether <em>unknown</em> refuses an assembly, too. Not where the missing fact is of the point
   * and not of a part, so that who fits the parts could not find it out.
   */
  default boolean blocksAssemblyWhenUnknown() {
    return true;
  }

  /** Whether a loop may not go back to service while this rule is not satisfied. */
  default boolean blocksReturnToService() {
    return true;
  }

  /** Whether already <em>attention</em> keeps the loop from service. */
  default boolean attentionBlocksService() {
    return false;
  }

  default Finding finding(Verdict verdict, String message) {
    return finding(verdict, message, "");
  }

  /**
   * @param remedy what would be right; may be empty
   */
  default Finding finding(Verdict verdict, String message, String remedy) {
    return new Finding(this, verdict, message, remedy, basis());
  }
}
