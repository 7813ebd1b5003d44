package loopwright.register;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.MACHINE;
import static loopwright.db.gen.Tables.OCCUPANCY;
import static loopwright.db.gen.Tables.PLACEMENT;
import static loopwright.db.gen.Tables.POINT;
import static loopwright.db.gen.Tables.SITE;
import static loopwright.db.gen.Tables.TRAIN;

import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import loopwright.db.Tx;
import loopwright.time.Span;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jspecify.annotations.Nullable;

/** Where parts are and have been, read from the placements. */
final class WhereaboutsStore {

  /** Where each of the parts is now; one that is nowhere is not in it. */
  Map<Long, List<Whereabouts>> now(DSLContext sql, Collection<Long> components) {
    Condition open = OCCUPANCY.VALID_UNTIL.eq(Tx.moment(Span.OPEN));
    return fetch(sql, OCCUPANCY.OCCUPANT.in(components).and(open));
  }

  /** Every stay that is believed now, the latest first. */
  List<Whereabouts> story(DSLContext sql, ComponentId id) {
    return fetch(sql, OCCUPANCY.OCCUPANT.eq(id.number())).getOrDefault(id.number(), List.of());
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

  private static Map<Long, List<Whereabouts>> fetch(DSLContext sql, Condition which) {
    return sql
        .select(
            OCCUPANCY.asterisk(),
            PLACEMENT.SOURCE,
            POINT.TAG,
            TRAIN.CODE,
            SITE.ZONE,
            CHANGE.asterisk())
        .from(OCCUPANCY)
        .join(PLACEMENT)
        .on(PLACEMENT.ID.eq(OCCUPANCY.PLACEMENT_ID))
        .join(CHANGE)
        .on(CHANGE.ID.eq(PLACEMENT.CHANGE_ID))
        .join(POINT)
        .on(POINT.ID.eq(OCCUPANCY.POINT_ID))
        .join(MACHINE)
        .on(MACHINE.ID.eq(POINT.MACHINE_ID))
        .join(TRAIN)
        .on(TRAIN.ID.eq(MACHINE.TRAIN_ID))
        .join(SITE)
        .on(SITE.ID.eq(TRAIN.SITE_ID))
        .where(which)
        .orderBy(OCCUPANCY.VALID_FROM.desc(), OCCUPANCY.PLACEMENT_ID.desc())
        .fetch()
        .stream()
        .collect(
            Collectors.groupingBy(
                row -> row.get(OCCUPANCY.OCCUPANT),
                Collectors.mapping(WhereaboutsStore::whereabouts, Collectors.toList())));
  }

  private static Whereabouts whereabouts(Record row) {
    return new Whereabouts(
        row.get(OCCUPANCY.POINT_ID),
        row.get(POINT.TAG),
        row.get(TRAIN.CODE),
        row.get(OCCUPANCY.SLOT),
        row.get(OCCUPANCY.OCCUPANT_CHANNEL),
        new Span(
            row.get(OCCUPANCY.VALID_FROM).toInstant(), row.get(OCCUPANCY.VALID_UNTIL).toInstant()),
        row.get(PLACEMENT.SOURCE),
        new ChangeNote(
            row.get(CHANGE.ID),
            row.get(CHANGE.MADE_AT).toInstant(),
            row.get(CHANGE.ACTOR_NAME),
            row.get(CHANGE.WHAT),
            row.get(CHANGE.REASON)),
        ZoneId.of(row.get(SITE.ZONE)));
  }
}
