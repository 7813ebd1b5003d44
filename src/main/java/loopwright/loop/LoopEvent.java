package loopwright.loop;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Something that happened to a loop, as it is told in its history.
 *
 * @param kind survey, assembly, correction, import, displaced …
 * @param happenedAt when it was so
 * @param verdict how the loop was judged then; null where nothing was judged
 * @param findings as they were told then
 * @param who as they were called when they entered it
 * @param enteredAt when it was entered
 */
public record LoopEvent(
    long id,
    String kind,
    Instant happenedAt,
    @Nullable String verdict,
    List<Told> findings,
    String note,
    String who,
    Instant enteredAt,
    String reason,
    long change) {

  /** One finding as it was told. */
  public record Told(String verdict, String rule, String sentences) {}
}
