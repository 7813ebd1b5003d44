package loopwright.plant;

import java.util.Optional;
import java.util.stream.Stream;

/** Whether movement toward the probe or away from it counts as positive. */
public enum Direction {
  TOWARD("toward"),
  AWAY("away");

  private final String word;

  Direction(String word) {
    this.word = word;
  }

  /** As files, pages and the database name it. */
  public String word() {
    return word;
  }

  public static Optional<Direction> named(String word) {
    return Stream.of(values()).filter(one -> one.word.equalsIgnoreCase(word.strip())).findFirst();
  }
}
