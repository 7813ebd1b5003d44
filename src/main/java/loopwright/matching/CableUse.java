package loopwright.matching;

/** Whether a family's systems have an extension cable. */
public enum CableUse {
  /** Every system of the family has one. */
  REQUIRED("required"),
  /** Probe leads reach the driver; a cable would be one too many. */
  NONE("none"),
  /** Depends on the lead, or is not known: the length balance decides. */
  OPTIONAL("optional");

  private final String word;

  CableUse(String word) {
    this.word = word;
  }

  /** As files and the register name it. */
  public String word() {
    return word;
  }
}
