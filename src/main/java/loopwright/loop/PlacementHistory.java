package loopwright.loop;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import loopwright.time.Span;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Every belief ever held about what was fitted, with the changes that began and ended it. */
public final class PlacementHistory {
  private final PlacementHistoryStore store = new PlacementHistoryStore();

  /**
   * A change as the record tells it.
   *
   * @param entry of the record since which it is known
   * @param by as they were called then
   */
  public record Entered(
      long change, long entry, String by, Instant at, String what, String reason) {}

  /**
   * A belief.
   *
   * @param ended the change that gave it up; null while it is held
   */
  public record Belief(Placed placed, Entered made, @Nullable Entered ended) {

    /** Whether it was held when the record ended with that entry. */
    public boolean isHeldAt(long entry) {
      return made.entry() <= entry && (ended == null || ended.entry() > entry);
    }

    public Span span() {
      return placed.span();
    }
  }

  /** All about these points, in chain order. */
  public List<Belief> ofPoints(DSLContext sql, Collection<Long> points) {
    return store.ofPoints(sql, points);
  }

  /**
   * The points of which something begins or ends after the one moment and up to the other, or of
   * which a belief was taken up or given up by the entries after the one and up to the other.
   */
  public Set<Long> touched(DSLContext sql, Span moments, long afterEntry, long upToEntry) {
    return store.touched(sql, moments, afterEntry, upToEntry);
  }
}
