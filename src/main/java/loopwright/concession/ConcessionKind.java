package loopwright.concession;

import java.time.Duration;
import java.util.Arrays;

/** Who may decide on a concession, and how long it may last. */
public enum ConcessionKind {
  /** An engineer decides. The longest term is our own choice: one outage to the next. */
  FULL("full", Duration.ofDays(731)),
  /** Two persons of the shop, until somebody with more authority is there: 72 hours at most. */
  PROVISIONAL("provisional", Duration.ofHours(72));

  private final String word;
  private final Duration longest;

  ConcessionKind(String word, Duration longest) {
    this.word = word;
    this.longest = longest;
  }

  public String word() {
    return word;
  }

  Duration longest() {
    return longest;
  }

  static ConcessionKind of(String word) {
    return Arrays.stream(values())
        .filter(kind -> kind.word.equals(word))
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("no kind of concession " + word));
  }
}
