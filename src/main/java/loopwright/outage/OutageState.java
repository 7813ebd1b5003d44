package loopwright.outage;

import java.util.stream.Stream;

/** Where an outage stands. It only moves on, never back. */
public enum OutageState {
  PLANNED("planned"),
  ISSUED("issued"),
  UNDER_WAY("under way"),
  CLOSED("closed");

  private final String word;

  OutageState(String word) {
    this.word = word;
  }

  /** As stored and shown. */
  public String word() {
    return word;
  }

  static OutageState ofWord(String word) {
    return Stream.of(values())
        .filter(state -> state.word.equals(word))
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("no state " + word));
  }
}
