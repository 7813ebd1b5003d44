package loopwright.calibration;

import java.util.Arrays;
import java.util.Optional;

/** Before or after anything was touched. */
public enum Stage {
  AS_FOUND("as found"),
  AS_LEFT("as left"),
  /** Nothing was touched: the as-found stands as the as-left. */
  NOTHING_TOUCHED("as found and as left");

  private final String word;

  Stage(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }

  public boolean isAsLeft() {
    return this != AS_FOUND;
  }

  public static Optional<Stage> named(String word) {
    return Arrays.stream(values()).filter(stage -> stage.word.equals(word)).findFirst();
  }

  static Stage ofWord(String word) {
    return named(word).orElseThrow(() -> new IllegalStateException("no stage " + word));
  }
}
