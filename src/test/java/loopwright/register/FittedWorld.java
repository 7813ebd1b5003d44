package loopwright.register;

import static loopwright.db.gen.Tables.OCCUPANCY;
import static loopwright.db.gen.Tables.PLACEMENT;

import java.time.Instant;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.PlacementRecord;
import loopwright.time.Span;

/** Parts fitted somewhere, for tests that are not about fitting. */
final class FittedWorld {
  private FittedWorld() {}

  static void fit(Tx tx, long point, String slot, ComponentId part, String from) {
    fit(tx, point, slot, part, from, "survey");
  }

  static void fit(Tx tx, long point, String slot, ComponentId part, String from, String source) {
    PlacementRecord row = tx.row(PLACEMENT);
    row.setPointId(point);
    row.setSlot(slot);
    row.setContent("part");
    row.setComponentId(part.number());
    row.setValidFrom(Tx.moment(Instant.parse(from)));
    row.setValidUntil(Tx.moment(Span.OPEN));
    row.setSource(source);
    tx.insert(row);
    tx.sql()
        .insertInto(OCCUPANCY)
        .set(OCCUPANCY.PLACEMENT_ID, row.getId())
        .set(OCCUPANCY.POINT_ID, point)
        .set(OCCUPANCY.SLOT, slot)
        .set(OCCUPANCY.CONTENT, "part")
        .set(OCCUPANCY.OCCUPANT, part.number())
        .set(OCCUPANCY.OCCUPANT_CHANNEL, (short) 1)
        .set(OCCUPANCY.COMPONENT_ID, part.number())
        .set(OCCUPANCY.VALID_FROM, row.getValidFrom())
        .set(OCCUPANCY.VALID_UNTIL, row.getValidUntil())
        .execute();
  }
}
