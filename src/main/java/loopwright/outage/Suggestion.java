package loopwright.outage;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * A loop of an outage's trains with what speaks for working on it.
 *
 * @param due when it is due; null without an interval or a calibration
 * @param reasons may be empty
 * @param verdict of all that is judged
 */
public record Suggestion(
    Outages.Loop loop, @Nullable LocalDate due, List<Reason> reasons, String verdict) {
  public Suggestion {
    reasons = List.copyOf(reasons);
  }

  /**
   * One thing that speaks for it.
   *
   * @param href where it stands on record; empty for what the loop's own page says
   */
  public record Reason(Kind kind, String sentence, String href) {
    public Reason(Kind kind, String sentence) {
      this(kind, sentence, "");
    }
  }

  /** What filters tell apart. */
  public enum Kind {
    OVERDUE("overdue"),
    DUE("due"),
    NOT_CALIBRATED("not calibrated as fitted"),
    OFF_BALANCE("out of balance"),
    REFUSED("refused"),
    CONCESSION("concession"),
    TEMPORARY("temporary fit"),
    SUSPECTED("suspected cause"),
    GAP_ROUND("gap round"),
    UNKNOWN("something unknown");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  /** All reasons in one line. */
  public String inWords() {
    return reasons.stream().map(Reason::sentence).collect(Collectors.joining(" "));
  }
}
