package loopwright.problem;

import java.util.Collection;
import java.util.Comparator;

/** The known word that somebody probably meant, for messages that say what would be right. */
public final class Nearest {
  private Nearest() {}

  /**
   * The known word with the fewest single-letter edits to the given one, the first in the alphabet
   * of several; empty when none is known.
   */
  public static String word(String word, Collection<String> known) {
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
