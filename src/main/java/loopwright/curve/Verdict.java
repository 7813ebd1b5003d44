package loopwright.curve;

/** What a curve or one of its tests came to. */
public enum Verdict {
  CONFORMS("conforms"),
  DOES_NOT_CONFORM("does not conform"),
  /** One test only: the readings don't stand where its limits apply. */
  NOT_JUDGED("not judged");

  private final String label;

  Verdict(String label) {
    this.label = label;
  }

  public String label() {
    return label;
  }

  static Verdict of(boolean conforms) {
    return conforms ? CONFORMS : DOES_NOT_CONFORM;
  }
}
