package loopwright.matching;

import java.util.Optional;
import java.util.stream.Stream;

/** Whether a family's systems have an extension cable. */
public enum CableUse {
  /** Every system of the family has one. */
  REQUIRED("required"),
  /** Probe leads reach the driver; a cable would be one too many. */
  NONE("none"),
  /** Depends on the lead, or is not known: the length balance decides. */
  OPTIONAL("optional");

  private final String word;

  CableUse(String word) {
    this.word = word;
  }

  /** As files and the register name it. */
  public String word() {
    return word;
  }

  /** The one of that word, in any case. */
  public static Optional<CableUse> named(String word) {
    return Stream.of(values()).filter(one -> one.word.equalsIgnoreCase(word.strip())).findFirst();
  }
}
