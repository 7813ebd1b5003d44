package loopwright.past;

import java.time.Instant;
import java.util.List;
import loopwright.loop.Content;
import loopwright.loop.PlacementHistory.Entered;
import loopwright.loop.Slot;
import org.jspecify.annotations.Nullable;

/**
 * A slot in which something else is on record at one moment than at another, or was meanwhile.
 *
 * @param before at the first moment, as known then; null where nothing is on record
 * @param after at the second
 * @param steps what led from the one to the other, the earliest first
 */
record Difference(
    long point, Slot slot, @Nullable Content before, @Nullable Content after, List<Step> steps) {

  /** Exchanged and back again: the two moments agree. */
  boolean isBack() {
    return before != null && before.equals(after);
  }

  /**
   * What happened, or what was said later of what had happened.
   *
   * @param at since when it was so; null where the record of the first moment itself became another
   *     one
   * @param content from then on; null where nothing is on record from then on
   * @param by the change that said so
   */
  record Step(@Nullable Instant at, @Nullable Content content, Entered by) {}
}
