package loopwright.standard;

import java.time.LocalDate;
import java.util.Arrays;
import loopwright.problem.Refused;

/**
 * Something that became of a reference standard.
 *
 * @param who entered it
 */
public record StandardEvent(Kind kind, LocalDate on, String note, String who) {

  /** What it was. */
  public enum Kind {
    CHECK_PASSED("check passed"),
    CHECK_FAILED("check failed"),
    OUT_OF_USE("taken out of use"),
    BACK_IN_USE("back in use");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }

    static Kind named(String word) {
      return Arrays.stream(values())
          .filter(kind -> kind.word.equals(word.strip()))
          .findFirst()
          .orElseThrow(() -> new Refused(StandardProblem.EVENT_KIND));
    }
  }
}
