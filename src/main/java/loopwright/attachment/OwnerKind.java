package loopwright.attachment;

import java.util.Arrays;
import java.util.Optional;

/** What a file can belong to. */
public enum OwnerKind {
  LOOP("loop"),
  CALIBRATION("calibration"),
  STANDARD("standard"),
  PART("part"),
  CHECK("check");

  private final String word;

  OwnerKind(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }

  public static Optional<OwnerKind> named(String word) {
    return Arrays.stream(values()).filter(kind -> kind.word.equals(word)).findFirst();
  }
}
