package loopwright.plant;

import java.util.Optional;
import java.util.stream.Stream;

/** What is measured at a point. */
public enum PointKind {
  RADIAL("radial vibration"),
  AXIAL("axial position"),
  PHASE("phase reference"),
  SPEED("speed"),
  DIFFERENTIAL_EXPANSION("differential expansion"),
  CASING_EXPANSION("casing expansion");

  private final String word;

  PointKind(String word) {
    this.word = word;
  }

  /** As files, pages and the database name it. */
  public String word() {
    return word;
  }

  public static Optional<PointKind> named(String word) {
    return Stream.of(values()).filter(one -> one.word.equalsIgnoreCase(word.strip())).findFirst();
  }
}
