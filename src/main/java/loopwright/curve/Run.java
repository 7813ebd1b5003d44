package loopwright.curve;

import java.util.Locale;
import java.util.Optional;

/** Which way the gap was moved while reading: backlash and drift show as a difference. */
public enum Run {
  UP,
  DOWN;

  /** {@code up} or {@code down}. */
  public String label() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The run of that label in any case; an empty text means the usual one, up. */
  public static Optional<Run> named(String text) {
    return switch (text.strip().toLowerCase(Locale.ROOT)) {
      case "", "up" -> Optional.of(UP);
      case "down" -> Optional.of(DOWN);
      default -> Optional.empty();
    };
  }
}
