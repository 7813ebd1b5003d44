package loopwright.exposure;

import java.util.Arrays;

/** What came out of an impact review. */
public enum ImpactOutcome {
  NO_HARM("no harm"),
  NOT_RULED_OUT("harm cannot be ruled out"),
  HARM("harm was done"),
  RECORD_WRONG("the record was wrong");

  private final String word;

  ImpactOutcome(String word) {
    this.word = word;
  }

  /** As pages and the database name it. */
  public String word() {
    return word;
  }

  static ImpactOutcome ofWord(String word) {
    return Arrays.stream(values())
        .filter(outcome -> outcome.word.equals(word))
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("no outcome " + word));
  }
}
