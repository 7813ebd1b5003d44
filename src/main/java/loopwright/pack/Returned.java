package loopwright.pack;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What came back of one loop.
 *
 * @param packLoop the sheet it was filled in on; null where it was said on the page
 * @param outcome {@code done}, {@code not done} or {@code failed}
 * @param foundGapVolts at rest as found, V, as typed; empty when not read
 * @param foundCalibration number of the as-found that came of it; empty if none
 * @param told what the record made of it, in words
 * @param cellsHash of what was filled in
 * @param who brought it back
 */
public record Returned(
    long point,
    String tag,
    @Nullable Long packLoop,
    String outcome,
    String reason,
    String doneBy,
    String foundGapVolts,
    String leftGapVolts,
    String foundCalibration,
    String leftCalibration,
    String told,
    String cellsHash,
    String fileName,
    String who,
    Instant at) {
  public static final String DONE = "done";
  public static final String NOT_DONE = "not done";
  public static final String FAILED = "failed";

  static final List<String> OUTCOMES = List.of(DONE, NOT_DONE, FAILED);

  /** Names the loop with this last word on it, for whoever says another one. */
  public String choice() {
    return point + ":" + Returns.mark(this);
  }

  /** Whether it is done. */
  public boolean isDone() {
    return outcome.equals(DONE);
  }
}
