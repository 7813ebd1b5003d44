package loopwright.outage;

import java.time.Instant;
import java.util.List;

/**
 * What is settled of one loop in an outage.
 *
 * @param taken whether it is in the scope
 * @param works in the order in which they are done
 * @param reason why it was taken in or out
 * @param who settled it
 */
public record ScopeLine(
    long point,
    String tag,
    boolean taken,
    List<Work> works,
    String reason,
    String who,
    Instant at) {
  public ScopeLine {
    works = List.copyOf(works);
  }
}
