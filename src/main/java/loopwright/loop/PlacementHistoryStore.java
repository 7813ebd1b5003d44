package loopwright.loop;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.PLACEMENT;

import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import loopwright.db.Chunks;
import org.jooq.DSLContext;
import org.jooq.Record;

/** Which change a belief about a placement came with. */
final class PlacementHistoryStore {
  private static final int AT_ONCE = 500;

  /** The change that entered a belief: by whom, when and why. */
  record Made(long change, String by, Instant at, String what, String reason) {}

  Made made(DSLContext sql, Placed belief) {
    return Objects.requireNonNull(made(sql, List.of(belief)).get(belief.placement()));
  }

  /** By the beliefs' numbers. */
  Map<Long, Made> made(DSLContext sql, Collection<Placed> beliefs) {
    Map<Long, Made> found = new HashMap<>();
    List<Long> numbers = beliefs.stream().map(Placed::placement).toList();
    for (List<Long> some : Chunks.of(new TreeSet<>(numbers), AT_ONCE)) {
      sql.select(PLACEMENT.ID, CHANGE.asterisk())
          .from(PLACEMENT)
          .join(CHANGE)
          .on(CHANGE.ID.eq(PLACEMENT.CHANGE_ID))
          .where(PLACEMENT.ID.in(some))
          .forEach(row -> found.put(row.get(PLACEMENT.ID), made(row)));
    }
    return found;
  }

  private static Made made(Record row) {
    return new Made(
        row.get(CHANGE.ID),
        row.get(CHANGE.ACTOR_NAME),
        row.get(CHANGE.MADE_AT).toInstant(),
        row.get(CHANGE.WHAT),
        row.get(CHANGE.REASON));
  }
}
