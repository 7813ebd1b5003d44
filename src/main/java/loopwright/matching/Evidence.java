package loopwright.matching;

/** How a length is known. Only the first three can give <em>matches</em>. */
public enum Evidence {
  READ_ON_PART("read on part", true),
  CERTIFICATE("from its certificate", true),
  MEASURED("measured", true),
  DRAWING("from a drawing", false),
  INFERRED("inferred", false),
  ASSUMED("assumed", false);

  private final String words;
  private final boolean proves;

  Evidence(String words, boolean proves) {
    this.words = words;
    this.proves = proves;
  }

  public String words() {
    return words;
  }

  /** Whether a rule may say <em>matches</em> on the strength of it. */
  public boolean proves() {
    return proves;
  }
}
