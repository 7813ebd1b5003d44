package loopwright.plant;

import java.util.Optional;
import java.util.stream.Stream;

/** Whether a point is watched; a retired one keeps its tag for ever. */
public enum PointState {
  IN_USE("in use"),
  RETIRED("retired");

  private final String word;

  PointState(String word) {
    this.word = word;
  }

  /** As files, pages and the database name it. */
  public String word() {
    return word;
  }

  public static Optional<PointState> named(String word) {
    return Stream.of(values()).filter(one -> one.word.equalsIgnoreCase(word.strip())).findFirst();
  }
}
