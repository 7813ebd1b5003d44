package loopwright.calibration;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** How the parts stood that a curve was taken with. */
public enum Setup {
  /** Fitted at the point where it was taken. */
  FITTED(null, ""),
  /** Together at no point. */
  BENCH("bench", "on the bench"),
  /** At a point, with another part in the place of a fitted one. */
  STOOD_IN("stood in", "part stood in");

  private final @Nullable String word;
  private final String shown;

  Setup(@Nullable String word, String shown) {
    this.word = word;
    this.shown = shown;
  }

  /** As stored: absent for what was fitted. */
  @Nullable String word() {
    return word;
  }

  /** For pages; empty for what was fitted. */
  public String shown() {
    return shown;
  }

  static Setup ofWord(@Nullable String word) {
    return Arrays.stream(values())
        .filter(setup -> word == null ? setup == FITTED : word.equals(setup.word))
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("no setup " + word));
  }
}
