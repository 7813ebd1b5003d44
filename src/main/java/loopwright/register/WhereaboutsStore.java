package loopwright.register;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.MACHINE;
import static loopwright.db.gen.Tables.OCCUPANCY;
import static loopwright.db.gen.Tables.PLACEMENT;
import static loopwright.db.gen.Tables.PLACEMENT_RETIRED;
import static loopwright.db.gen.Tables.POINT;
import static loopwright.db.gen.Tables.SITE;
import static loopwright.db.gen.Tables.TRAIN;

import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import loopwright.db.Chunks;
import loopwright.db.RowByRow;
import loopwright.db.Tx;
import loopwright.journal.KnownTimeStore;
import loopwright.time.Span;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.Result;
import org.jspecify.annotations.Nullable;

/** Where parts are and have been, read from the placements. */
final class WhereaboutsStore {
  private static final int PLACES_AT_ONCE = 500;

  /** Where each of the parts is now; one that is nowhere is not in it. */
  Map<Long, List<Whereabouts>> now(DSLContext sql, Collection<Long> components) {
    Condition open = RowByRow.of(OCCUPANCY.VALID_UNTIL).eq(Tx.moment(Span.OPEN));
    return fetch(sql, OCCUPANCY.OCCUPANT.in(components).and(open));
  }

  /** Every stay that is believed now, the latest first. */
  List<Whereabouts> story(DSLContext sql, ComponentId id) {
    return fetch(sql, OCCUPANCY.OCCUPANT.eq(id.number())).getOrDefault(id.number(), List.of());
  }

  /** Every stay that was believed when the record ended with that entry, the latest first. */
  List<Whereabouts> story(DSLContext sql, ComponentId id, long entry) {
    Result<? extends Record> rows =
        sql.select(PLACEMENT.asterisk(), PLACEMENT_RETIRED.CHANGE_ID, CHANGE.asterisk())
            .from(PLACEMENT)
            .leftJoin(PLACEMENT_RETIRED)
            .on(PLACEMENT_RETIRED.PLACEMENT_ID.eq(PLACEMENT.ID))
            .join(CHANGE)
            .on(CHANGE.ID.eq(PLACEMENT.CHANGE_ID))
            .where(PLACEMENT.COMPONENT_ID.eq(id.number()))
            .orderBy(PLACEMENT.VALID_FROM.desc(), PLACEMENT.ID.desc())
            .fetch();
    List<? extends Record> held =
        KnownTimeStore.held(sql, entry, rows, PLACEMENT.CHANGE_ID, PLACEMENT_RETIRED.CHANGE_ID);
    Map<Long, Record> places =
        places(sql, held.stream().map(row -> row.get(PLACEMENT.POINT_ID)).distinct().toList());
    return held.stream()
        .map(row -> then(row, Objects.requireNonNull(places.get(row.get(PLACEMENT.POINT_ID)))))
        .toList();
  }

  ZoneId clock(DSLContext sql, @Nullable ComponentId id) {
    if (id != null) {
      List<Whereabouts> story = story(sql, id);
      if (!story.isEmpty()) {
        return story.get(0).zone();
      }
    }
    List<String> zones = sql.selectDistinct(SITE.ZONE).from(SITE).fetch(SITE.ZONE);
    return zones.size() == 1 ? ZoneId.of(zones.get(0)) : ZoneOffset.UTC;
  }

  /**
   * In two statements: of seven tables joined the embedded engine tries every order before it asks
   * its indexes, which took a third of a page's time.
   */
  private static Map<Long, List<Whereabouts>> fetch(DSLContext sql, Condition which) {
    List<Record> stays = stays(sql, which);
    Map<Long, Record> places =
        places(sql, stays.stream().map(row -> row.get(OCCUPANCY.POINT_ID)).distinct().toList());
    return stays.stream()
        .collect(
            Collectors.groupingBy(
                row -> row.get(OCCUPANCY.OCCUPANT),
                Collectors.mapping(
                    row ->
                        whereabouts(
                            row, Objects.requireNonNull(places.get(row.get(OCCUPANCY.POINT_ID)))),
                    Collectors.toList())));
  }

  private static List<Record> stays(DSLContext sql, Condition which) {
    return List.copyOf(
        sql.select(OCCUPANCY.asterisk(), PLACEMENT.SOURCE, CHANGE.asterisk())
            .from(OCCUPANCY)
            .join(PLACEMENT)
            .on(PLACEMENT.ID.eq(OCCUPANCY.PLACEMENT_ID))
            .join(CHANGE)
            .on(CHANGE.ID.eq(PLACEMENT.CHANGE_ID))
            .where(which)
            .orderBy(OCCUPANCY.VALID_FROM.desc(), OCCUPANCY.PLACEMENT_ID.desc())
            .fetch());
  }

  private static Map<Long, Record> places(DSLContext sql, List<Long> points) {
    Map<Long, Record> found = new HashMap<>();
    for (List<Long> some : Chunks.of(points, PLACES_AT_ONCE)) {
      found.putAll(
          sql.select(POINT.ID, POINT.TAG, TRAIN.CODE, SITE.ZONE)
              .from(POINT)
              .join(MACHINE)
              .on(MACHINE.ID.eq(POINT.MACHINE_ID))
              .join(TRAIN)
              .on(TRAIN.ID.eq(MACHINE.TRAIN_ID))
              .join(SITE)
              .on(SITE.ID.eq(TRAIN.SITE_ID))
              .where(POINT.ID.in(some))
              .fetchMap(POINT.ID));
    }
    return found;
  }

  private static Whereabouts whereabouts(Record row, Record place) {
    return new Whereabouts(
        row.get(OCCUPANCY.POINT_ID),
        place.get(POINT.TAG),
        place.get(TRAIN.CODE),
        row.get(OCCUPANCY.SLOT),
        row.get(OCCUPANCY.OCCUPANT_CHANNEL),
        new Span(
            row.get(OCCUPANCY.VALID_FROM).toInstant(), row.get(OCCUPANCY.VALID_UNTIL).toInstant()),
        row.get(PLACEMENT.SOURCE),
        made(row),
        ZoneId.of(place.get(SITE.ZONE)));
  }

  private static Whereabouts then(Record row, Record place) {
    return new Whereabouts(
        row.get(PLACEMENT.POINT_ID),
        place.get(POINT.TAG),
        place.get(TRAIN.CODE),
        row.get(PLACEMENT.SLOT),
        row.get(PLACEMENT.COMPONENT_CHANNEL),
        new Span(
            row.get(PLACEMENT.VALID_FROM).toInstant(), row.get(PLACEMENT.VALID_UNTIL).toInstant()),
        row.get(PLACEMENT.SOURCE),
        made(row),
        ZoneId.of(place.get(SITE.ZONE)));
  }

  private static ChangeNote made(Record row) {
    return new ChangeNote(
        row.get(CHANGE.ID),
        row.get(CHANGE.MADE_AT).toInstant(),
        row.get(CHANGE.ACTOR_NAME),
        row.get(CHANGE.WHAT),
        row.get(CHANGE.REASON));
  }
}
