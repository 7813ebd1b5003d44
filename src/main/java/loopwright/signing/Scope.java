package loopwright.signing;

import java.util.Arrays;

/** What an authorisation is for. */
public enum Scope {
  /** To sign calibrations that one took oneself. */
  SIGN("sign"),
  /** To review what another person has signed. */
  REVIEW("review");

  private final String word;

  Scope(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }

  static Scope named(String word) {
    return Arrays.stream(values())
        .filter(scope -> scope.word.equals(word))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("Choose what it is for."));
  }
}
