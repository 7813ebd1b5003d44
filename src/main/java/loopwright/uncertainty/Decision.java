package loopwright.uncertainty;

/**
 * What is stated about a measured value and a tolerance.
 *
 * @see "ILAC-G8:09/2019, 4.2 (non-binary statements with a guard band)"
 */
public enum Decision {
  CONFORMS("conforms", "pass"),
  CONFORMS_NOT_PROVED("conforms, not proved", "conditional pass"),
  DOES_NOT_CONFORM_NOT_PROVED("does not conform, not proved", "conditional fail"),
  DOES_NOT_CONFORM("does not conform", "fail");

  private final String label;
  private final String guideWord;

  Decision(String label, String guideWord) {
    this.label = label;
    this.guideWord = guideWord;
  }

  public String label() {
    return label;
  }

  /** The word that ILAC-G8 uses for it. */
  public String guideWord() {
    return guideWord;
  }
}
