package loopwright.loop;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.JOURNAL_ENTRY;
import static loopwright.db.gen.Tables.PLACEMENT;
import static loopwright.db.gen.Tables.PLACEMENT_RETIRED;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import loopwright.db.Chunks;
import loopwright.db.Tx;
import loopwright.journal.KnownTimeStore;
import loopwright.loop.PlacementHistory.Belief;
import loopwright.loop.PlacementHistory.Entered;
import loopwright.time.Span;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.Record1;
import org.jooq.Select;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/** Which changes beliefs about placements came and went with. */
final class PlacementHistoryStore {
  private static final int AT_ONCE = 500;

  Entered made(DSLContext sql, Placed belief) {
    return Objects.requireNonNull(made(sql, List.of(belief)).get(belief.placement()));
  }

  /** The changes that entered these beliefs, by the beliefs' numbers. */
  Map<Long, Entered> made(DSLContext sql, Collection<Placed> beliefs) {
    Map<Long, Long> changes = new HashMap<>();
    List<Long> numbers = beliefs.stream().map(Placed::placement).toList();
    for (List<Long> some : Chunks.of(new TreeSet<>(numbers), AT_ONCE)) {
      changes.putAll(
          sql.select(PLACEMENT.ID, PLACEMENT.CHANGE_ID)
              .from(PLACEMENT)
              .where(PLACEMENT.ID.in(some))
              .fetchMap(PLACEMENT.ID, PLACEMENT.CHANGE_ID));
    }
    Map<Long, Entered> entered = entered(sql, changes.values());
    Map<Long, Entered> made = new HashMap<>();
    changes.forEach(
        (belief, change) -> made.put(belief, Objects.requireNonNull(entered.get(change))));
    return made;
  }

  /** Every belief ever held about these points, in chain order. */
  List<Belief> ofPoints(DSLContext sql, Collection<Long> points) {
    List<Record> rows = new ArrayList<>();
    for (List<Long> some : Chunks.of(new TreeSet<>(points), AT_ONCE)) {
      rows.addAll(
          sql.select(PLACEMENT.asterisk(), PLACEMENT_RETIRED.CHANGE_ID)
              .from(PLACEMENT)
              .leftJoin(PLACEMENT_RETIRED)
              .on(PLACEMENT_RETIRED.PLACEMENT_ID.eq(PLACEMENT.ID))
              .where(PLACEMENT.POINT_ID.in(some))
              .fetch());
    }
    Set<Long> changes = new TreeSet<>();
    rows.forEach(row -> changes.add(row.get(PLACEMENT.CHANGE_ID)));
    rows.forEach(row -> addIfThere(changes, row.get(PLACEMENT_RETIRED.CHANGE_ID)));
    Map<Long, Entered> entered = entered(sql, changes);
    return rows.stream()
        .map(row -> belief(row, entered))
        .sorted(Comparator.comparing(Belief::placed, Placed.IN_CHAIN_ORDER))
        .toList();
  }

  private static void addIfThere(Set<Long> changes, @Nullable Long change) {
    if (change != null) {
      changes.add(change);
    }
  }

  private static Belief belief(Record row, Map<Long, Entered> entered) {
    Long ended = row.get(PLACEMENT_RETIRED.CHANGE_ID);
    return new Belief(
        PastPlacementStore.placed(row),
        Objects.requireNonNull(entered.get(row.get(PLACEMENT.CHANGE_ID))),
        ended == null ? null : entered.get(ended));
  }

  private static Map<Long, Entered> entered(DSLContext sql, Collection<Long> changes) {
    Map<Long, Long> entries = KnownTimeStore.entries(sql, changes);
    Map<Long, Entered> found = new HashMap<>();
    for (List<Long> some : Chunks.of(new TreeSet<>(changes), AT_ONCE)) {
      sql.selectFrom(CHANGE)
          .where(CHANGE.ID.in(some))
          .forEach(
              row ->
                  found.put(
                      row.getId(),
                      new Entered(
                          row.getId(),
                          entries.getOrDefault(row.getId(), Long.MAX_VALUE),
                          row.getActorName(),
                          row.getMadeAt().toInstant(),
                          row.getWhat(),
                          row.getReason())));
    }
    return found;
  }

  /** Points with a belief that begins or ends in that time, or came or went with these entries. */
  Set<Long> touched(DSLContext sql, Span moments, long afterEntry, long upToEntry) {
    OffsetDateTime from = Tx.moment(moments.from());
    OffsetDateTime until = Tx.moment(moments.until());
    Condition begins = PLACEMENT.VALID_FROM.gt(from).and(PLACEMENT.VALID_FROM.le(until));
    Condition ends = PLACEMENT.VALID_UNTIL.gt(from).and(PLACEMENT.VALID_UNTIL.le(until));
    Set<Long> points = points(sql, begins.or(ends));
    if (afterEntry < upToEntry) {
      Select<Record1<Long>> changes =
          DSL.select(JOURNAL_ENTRY.CHANGE_ID)
              .from(JOURNAL_ENTRY)
              .where(JOURNAL_ENTRY.SEQ.gt(afterEntry))
              .and(JOURNAL_ENTRY.SEQ.le(upToEntry));
      points.addAll(points(sql, PLACEMENT.CHANGE_ID.in(changes)));
      Select<Record1<Long>> retired =
          DSL.select(PLACEMENT_RETIRED.PLACEMENT_ID)
              .from(PLACEMENT_RETIRED)
              .where(PLACEMENT_RETIRED.CHANGE_ID.in(changes));
      points.addAll(points(sql, PLACEMENT.ID.in(retired)));
    }
    return points;
  }

  private static Set<Long> points(DSLContext sql, Condition which) {
    return new TreeSet<>(
        sql.selectDistinct(PLACEMENT.POINT_ID)
            .from(PLACEMENT)
            .where(which)
            .fetch(PLACEMENT.POINT_ID));
  }
}
