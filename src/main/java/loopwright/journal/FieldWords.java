package loopwright.journal;

import java.util.List;
import java.util.Map;

/** Columns and contents as people read them. */
final class FieldWords {
  private static final Map<String, String> UNITS =
      Map.of(
          "_um", "µm",
          "_mm", "mm",
          "_m", "m",
          "_volts", "V",
          "_c", "°C",
          "_s", "s",
          "_percent", "%",
          "_degrees", "°",
          "_mil", "mil",
          "_months", "months");

  /** Columns that say nothing to a reader: numbers inside the database. */
  private static final List<String> UNTOLD =
      List.of("id", "change_id", "version", "tag_key", "label_key", "code_key", "identity_key");

  private static final String OPEN = "9999-12-31T00:00:00Z";

  private FieldWords() {}

  static boolean isTold(String column) {
    return !UNTOLD.contains(column);
  }

  /** For instance {@code approved gap, µm}. */
  static String column(String name) {
    for (Map.Entry<String, String> unit : UNITS.entrySet()) {
      if (name.endsWith(unit.getKey())) {
        return words(name.substring(0, name.length() - unit.getKey().length()))
            + ", "
            + unit.getValue();
      }
    }
    return words(name.endsWith("_id") ? name.substring(0, name.length() - 3) : name);
  }

  static String words(String name) {
    return name.replace('_', ' ');
  }

  static boolean isOpen(String content) {
    return content.equals(OPEN);
  }

  static String truth(String content) {
    return content.equals("true") ? "yes" : content.equals("false") ? "no" : content;
  }

  /** What a fact did, in a word. */
  static String operation(String operation) {
    return switch (operation) {
      case "insert", "insert group" -> "added";
      case "update" -> "changed";
      case "delete" -> "removed";
      default -> operation;
    };
  }
}
