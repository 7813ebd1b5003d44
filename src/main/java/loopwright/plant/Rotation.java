package loopwright.plant;

import java.util.Optional;
import java.util.stream.Stream;

/** Sense of rotation as seen from the viewing end. */
public enum Rotation {
  CLOCKWISE("clockwise"),
  COUNTER_CLOCKWISE("counter-clockwise");

  private final String word;

  Rotation(String word) {
    this.word = word;
  }

  /** As files, pages and the database name it. */
  public String word() {
    return word;
  }

  public static Optional<Rotation> named(String word) {
    return Stream.of(values()).filter(one -> one.word.equalsIgnoreCase(word.strip())).findFirst();
  }
}
