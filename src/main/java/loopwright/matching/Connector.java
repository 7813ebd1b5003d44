package loopwright.matching;

import java.util.Locale;
import java.util.Optional;

/**
 * One half of a plug connection.
 *
 * @param type as the maker calls it, told apart without regard to case and blanks
 */
public record Connector(String type, Gender gender) {

  /** Which half it is. */
  public enum Gender {
    MALE,
    FEMALE;

    /** As files and pages name it. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** Refuses a connector without a type. */
  public Connector {
    type = type.strip();
    if (type.isEmpty()) {
      throw new IllegalArgumentException("A connector has a type.");
    }
  }

  /** Reads {@code miniature coaxial male}: the type, then the half; empty if it isn't that. */
  public static Optional<Connector> read(String text) {
    String stripped = text.strip();
    for (Gender gender : Gender.values()) {
      String word = gender.word();
      int type = stripped.length() - word.length();
      if (type > 0
          && !Character.isLetterOrDigit(stripped.charAt(type - 1))
          && stripped.substring(type).toLowerCase(Locale.ROOT).equals(word)) {
        String before = stripped.substring(0, type).replaceAll("[\\s,;]+$", "");
        return before.isEmpty() ? Optional.empty() : Optional.of(new Connector(before, gender));
      }
    }
    return Optional.empty();
  }

  public boolean isOfType(Connector other) {
    return plain(type).equals(plain(other.type));
  }

  /** Whether the two halves go together: one type, one of each gender. */
  public boolean mates(Connector other) {
    return isOfType(other) && gender != other.gender;
  }

  private static String plain(String type) {
    return type.replaceAll("\\s+", "").toLowerCase(Locale.ROOT);
  }

  /** As {@link #read} takes it. */
  @Override
  public String toString() {
    return type + " " + gender.word();
  }
}
