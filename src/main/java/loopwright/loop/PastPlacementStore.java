package loopwright.loop;

import static loopwright.db.gen.Tables.PLACEMENT;
import static loopwright.db.gen.Tables.PLACEMENT_RETIRED;

import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.List;
import loopwright.db.RowByRow;
import loopwright.db.Tx;
import loopwright.journal.KnownTimeStore;
import loopwright.time.Span;
import loopwright.time.Viewpoint;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.Result;

/** Placements as they were believed when the record had fewer entries. */
final class PastPlacementStore {

  /** What was believed to sit at these points at the moment, in chain order. */
  List<Placed> at(DSLContext sql, Collection<Long> points, Viewpoint viewpoint) {
    OffsetDateTime at = Tx.moment(viewpoint.at());
    Condition covers = RowByRow.of(PLACEMENT.VALID_FROM).le(at).and(PLACEMENT.VALID_UNTIL.gt(at));
    return fetch(sql, PLACEMENT.POINT_ID.in(points).and(covers), entry(viewpoint));
  }

  private static long entry(Viewpoint viewpoint) {
    Long known = viewpoint.known();
    if (known == null) {
      throw new IllegalArgumentException("What is known now stands in the table of occupancy.");
    }
    return known;
  }

  private static List<Placed> fetch(DSLContext sql, Condition which, long entry) {
    Result<? extends Record> rows =
        sql.select(PLACEMENT.asterisk(), PLACEMENT_RETIRED.CHANGE_ID)
            .from(PLACEMENT)
            .leftJoin(PLACEMENT_RETIRED)
            .on(PLACEMENT_RETIRED.PLACEMENT_ID.eq(PLACEMENT.ID))
            .where(which)
            .fetch();
    return KnownTimeStore.held(sql, entry, rows, PLACEMENT.CHANGE_ID, PLACEMENT_RETIRED.CHANGE_ID)
        .stream()
        .map(PastPlacementStore::placed)
        .sorted(Placed.IN_CHAIN_ORDER)
        .toList();
  }

  static Placed placed(Record row) {
    return new Placed(
        row.get(PLACEMENT.ID),
        row.get(PLACEMENT.POINT_ID),
        Slot.ofWord(row.get(PLACEMENT.SLOT)),
        PlacementStore.content(
            row.get(PLACEMENT.CONTENT),
            row.get(PLACEMENT.COMPONENT_ID),
            row.get(PLACEMENT.COMPONENT_CHANNEL)),
        new Span(
            row.get(PLACEMENT.VALID_FROM).toInstant(), row.get(PLACEMENT.VALID_UNTIL).toInstant()),
        row.get(PLACEMENT.SOURCE));
  }
}
