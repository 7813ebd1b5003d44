package loopwright.register;

import java.util.Optional;
import java.util.stream.Stream;

/** Whether a part may be used at all, wherever it is. */
public enum Condition {
  USABLE("usable"),
  QUARANTINED("quarantined"),
  SCRAPPED("scrapped");

  private final String word;

  Condition(String word) {
    this.word = word;
  }

  /** As files, pages and the database name it. */
  public String word() {
    return word;
  }

  public static Optional<Condition> named(String word) {
    return Stream.of(values()).filter(one -> one.word.equalsIgnoreCase(word.strip())).findFirst();
  }
}
