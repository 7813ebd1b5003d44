package loopwright.fieldcheck;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** Whether the machine was at its running temperature; a hot gap is another than a cold one. */
public enum Warmth {
  COLD("cold"),
  HOT("hot"),
  NOT_RECORDED("not recorded");

  private final String word;

  Warmth(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }

  public static Optional<Warmth> named(String word) {
    String plain = word.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(values()).filter(warmth -> warmth.word.equals(plain)).findFirst();
  }

  static Warmth ofWord(String word) {
    return named(word).orElseThrow(() -> new IllegalStateException("no warmth " + word));
  }
}
