package loopwright.importing;

import java.util.Arrays;
import java.util.Optional;

/** What stands between the whole and the rest of a number. */
public enum DecimalMark {
  POINT('.'),
  COMMA(',');

  private final char character;

  DecimalMark(char character) {
    this.character = character;
  }

  char character() {
    return character;
  }

  DecimalMark other() {
    return this == POINT ? COMMA : POINT;
  }

  /** {@code point} or {@code comma}. */
  public String word() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }

  public static Optional<DecimalMark> named(String word) {
    return Arrays.stream(values()).filter(mark -> mark.word().equals(word)).findFirst();
  }
}
