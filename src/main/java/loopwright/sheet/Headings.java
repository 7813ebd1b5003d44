package loopwright.sheet;

import java.util.Collection;
import java.util.Comparator;
import loopwright.problem.Refused;

/**
 * Checks a table's headings against those a reader knows; an unknown one is refused, not ignored.
 */
public final class Headings {
  private Headings() {}

  /**
   * @throws Refused naming the first unknown heading and the nearest known one
   */
  public static void refuseUnknown(Table table, Collection<String> known) {
    for (int i = 0; i < table.headings().size(); i++) {
      String heading = table.headings().get(i);
      if (!known.contains(heading)) {
        throw new Refused(
            SheetProblem.UNKNOWN_HEADING,
            table.name(),
            table.headingLine(),
            i + 1,
            heading,
            nearest(heading, known));
      }
    }
  }

  /**
   * @throws Refused naming the first of these headings that the table lacks
   */
  public static void refuseMissing(Table table, Collection<String> needed) {
    for (String heading : needed) {
      if (!table.has(heading)) {
        throw new Refused(SheetProblem.MISSING_HEADING, table.name(), table.headingLine(), heading);
      }
    }
  }

  /** The known word with the fewest single-letter edits to the given one. */
  public static String nearest(String word, Collection<String> known) {
    return known.stream()
        .min(Comparator.<String>comparingInt(k -> edits(word, k)).thenComparing(k -> k))
        .orElse("");
  }

  /** Levenshtein distance. */
  private static int edits(String a, String b) {
    int[] before = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      before[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int[] now = new int[b.length() + 1];
      now[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int swap = before[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        now[j] = Math.min(swap, Math.min(before[j], now[j - 1]) + 1);
      }
      before = now;
    }
    return before[b.length()];
  }
}
