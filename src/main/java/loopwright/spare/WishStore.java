package loopwright.spare;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.POINT;
import static loopwright.db.gen.Tables.SPARE_WISH;

import java.util.List;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.SpareWishRecord;
import org.jooq.DSLContext;
import org.jooq.impl.DSL;

/** Slots for which a spare is wanted, whichever it is. Insert-only. */
final class WishStore {

  /** A slot that waits for a spare. */
  record Standing(long point, String tag, String slot, String reason, String who) {}

  void put(Tx tx, long outage, long point, String slot, boolean wanted, String reason) {
    SpareWishRecord row = tx.row(SPARE_WISH);
    row.setOutageId(outage);
    row.setPointId(point);
    row.setSlot(slot);
    row.setWanted(wanted);
    row.setReason(reason);
    tx.insert(row);
  }

  /** Those that nobody took back, by tag and slot. */
  List<Standing> standing(DSLContext sql, long outage) {
    return sql.select(
            SPARE_WISH.POINT_ID, POINT.TAG, SPARE_WISH.SLOT, SPARE_WISH.REASON, CHANGE.ACTOR_NAME)
        .from(SPARE_WISH)
        .join(POINT)
        .on(POINT.ID.eq(SPARE_WISH.POINT_ID))
        .join(CHANGE)
        .on(CHANGE.ID.eq(SPARE_WISH.CHANGE_ID))
        .where(
            SPARE_WISH.ID.in(
                DSL.select(DSL.max(SPARE_WISH.ID))
                    .from(SPARE_WISH)
                    .where(SPARE_WISH.OUTAGE_ID.eq(outage))
                    .groupBy(SPARE_WISH.POINT_ID, SPARE_WISH.SLOT)))
        .and(SPARE_WISH.WANTED)
        .orderBy(POINT.TAG_KEY, SPARE_WISH.SLOT)
        .fetch(
            row ->
                new Standing(
                    row.get(SPARE_WISH.POINT_ID),
                    row.get(POINT.TAG),
                    row.get(SPARE_WISH.SLOT),
                    row.get(SPARE_WISH.REASON),
                    row.get(CHANGE.ACTOR_NAME)));
  }
}
