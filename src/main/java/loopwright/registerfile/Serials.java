package loopwright.registerfile;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import loopwright.problem.Problem;
import org.jspecify.annotations.Nullable;

/** What can stand in a column of serials. A serial is text: zeros at its front count. */
final class Serials {
  static final int MOST_CHARACTERS = 60;

  /** A part is fitted, but its serial can't be read. */
  static final String NOT_ACCESSIBLE = "not accessible";

  /** Words that people put where they have no serial; two parts called so are not one part. */
  private static final Set<String> PLACEHOLDERS =
      Set.of("-", "--", "---", "?", "n/a", "na", "nil", "none", "no", "unknown", "tbc", "tbd", "x");

  private static final Pattern SHORTENED = Pattern.compile("\\d([.,]\\d+)?[eE]\\+\\d+");

  private Serials() {}

  static boolean isNotAccessible(String typed) {
    return typed.equalsIgnoreCase(NOT_ACCESSIBLE);
  }

  /** Why the text can't be taken for a serial; null when it can. */
  static @Nullable Problem problemOf(String typed) {
    if (PLACEHOLDERS.contains(typed.toLowerCase(Locale.ROOT))) {
      return RegisterFileProblem.NOT_A_SERIAL;
    }
    return SHORTENED.matcher(typed).matches() ? RegisterFileProblem.SHORTENED_BY_SPREADSHEET : null;
  }
}
