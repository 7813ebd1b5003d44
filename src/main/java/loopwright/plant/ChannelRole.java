package loopwright.plant;

import java.util.Optional;
import java.util.stream.Stream;

/** What a loop is to a channel. */
public enum ChannelRole {
  MEASURES("measures"),
  PHASE_REFERENCE_FOR("phase reference for");

  private final String word;

  ChannelRole(String word) {
    this.word = word;
  }

  /** As files, pages and the database name it. */
  public String word() {
    return word;
  }

  public static Optional<ChannelRole> named(String word) {
    return Stream.of(values()).filter(one -> one.word.equalsIgnoreCase(word.strip())).findFirst();
  }
}
