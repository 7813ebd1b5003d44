package loopwright.plant;

import java.util.Optional;
import java.util.stream.Stream;

/** What a phase reference sees once or several times a turn. */
public enum Mark {
  NOTCH("notch"),
  PROJECTION("projection");

  private final String word;

  Mark(String word) {
    this.word = word;
  }

  /** As files, pages and the database name it. */
  public String word() {
    return word;
  }

  public static Optional<Mark> named(String word) {
    return Stream.of(values()).filter(one -> one.word.equalsIgnoreCase(word.strip())).findFirst();
  }
}
