package loopwright.matching;

import java.util.Optional;
import java.util.stream.Stream;

/** Where a component stands in its life. */
public enum PartState {
  IN_STOCK("in stock"),
  FITTED("fitted"),
  QUARANTINED("quarantined"),
  SCRAPPED("scrapped");

  private final String word;

  PartState(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }

  /** The one of that word, in any case. */
  public static Optional<PartState> named(String word) {
    return Stream.of(values()).filter(one -> one.word.equalsIgnoreCase(word.strip())).findFirst();
  }
}
