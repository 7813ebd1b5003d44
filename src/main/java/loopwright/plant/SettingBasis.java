package loopwright.plant;

import java.util.Optional;
import java.util.stream.Stream;

/** Whether a setting is what the monitor was told or what somebody read out of it. */
public enum SettingBasis {
  APPROVED("approved"),
  FOUND("found");

  private final String word;

  SettingBasis(String word) {
    this.word = word;
  }

  /** As files, pages and the database name it. */
  public String word() {
    return word;
  }

  public static Optional<SettingBasis> named(String word) {
    return Stream.of(values()).filter(one -> one.word.equalsIgnoreCase(word.strip())).findFirst();
  }
}
