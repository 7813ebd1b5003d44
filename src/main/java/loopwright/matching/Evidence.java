package loopwright.matching;

import java.util.Optional;
import java.util.stream.Stream;

/** How a length is known. Only the first three can give <em>matches</em>. */
public enum Evidence {
  READ_ON_PART("read on part", "read on part", true),
  CERTIFICATE("certificate", "from its certificate", true),
  MEASURED("measured", "measured", true),
  DRAWING("drawing", "from a drawing", false),
  INFERRED("inferred", "inferred", false),
  ASSUMED("assumed", "assumed", false);

  private final String word;
  private final String phrase;
  private final boolean proves;

  Evidence(String word, String phrase, boolean proves) {
    this.word = word;
    this.phrase = phrase;
    this.proves = proves;
  }

  /** As files and the register name it. */
  public String word() {
    return word;
  }

  /** As a sentence takes it: {@code 4.0 m, from a drawing}. */
  public String phrase() {
    return phrase;
  }

  /** Whether a rule may say <em>matches</em> on the strength of it. */
  public boolean proves() {
    return proves;
  }

  /** The one of that word, in any case. */
  public static Optional<Evidence> named(String word) {
    return Stream.of(values()).filter(one -> one.word.equalsIgnoreCase(word.strip())).findFirst();
  }
}
