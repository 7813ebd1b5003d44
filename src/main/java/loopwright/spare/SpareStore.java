package loopwright.spare;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.COMPONENT;
import static loopwright.db.gen.Tables.POINT;
import static loopwright.db.gen.Tables.SPARE_HELD;
import static loopwright.db.gen.Tables.SPARE_RELEASE;
import static loopwright.db.gen.Tables.SPARE_RESERVATION;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import loopwright.db.Chunks;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.SpareHeldRecord;
import loopwright.db.gen.tables.records.SpareReleaseRecord;
import loopwright.db.gen.tables.records.SpareReservationRecord;
import loopwright.units.Length;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;

/** Reservations, what is held now, and releases. */
final class SpareStore {

  /**
   * @throws loopwright.problem.Refused if the part is held already
   */
  void hold(
      Tx tx, long outage, long point, String slot, long component, String verdict, String proof) {
    SpareReservationRecord row = tx.row(SPARE_RESERVATION);
    row.setOutageId(outage);
    row.setPointId(point);
    row.setSlot(slot);
    row.setComponentId(component);
    row.setVerdict(verdict);
    row.setProof(proof);
    long reservation = tx.insert(row).getId();
    SpareHeldRecord held = tx.row(SPARE_HELD);
    held.setComponentId(component);
    held.setReservationId(reservation);
    tx.insert(held);
  }

  void release(Tx tx, Held held, String reason) {
    SpareReleaseRecord row = tx.row(SPARE_RELEASE);
    row.setReservationId(held.reservation());
    row.setReason(reason);
    tx.insert(row);
    tx.delete(
        tx.sql()
            .fetchSingle(
                SPARE_HELD,
                SPARE_HELD
                    .COMPONENT_ID
                    .eq(held.component())
                    .and(SPARE_HELD.RESERVATION_ID.eq(held.reservation()))));
  }

  List<Held> ofOutage(DSLContext sql, long outage) {
    return fetch(sql, SPARE_RESERVATION.OUTAGE_ID.eq(outage));
  }

  List<Held> ofComponents(DSLContext sql, Collection<Long> components) {
    List<Held> all = new ArrayList<>();
    for (List<Long> some : Chunks.of(components, 1_000)) {
      all.addAll(fetch(sql, SPARE_HELD.COMPONENT_ID.in(some)));
    }
    return all;
  }

  /** Whether anything at all is held: judging asks for every loop. */
  boolean isAnyHeld(DSLContext sql) {
    return sql.fetchExists(SPARE_HELD);
  }

  private static List<Held> fetch(DSLContext sql, Condition which) {
    return sql.select(SPARE_RESERVATION.asterisk())
        .select(
            POINT.TAG,
            COMPONENT.LABEL,
            COMPONENT.KIND,
            COMPONENT.LENGTH_M,
            COMPONENT.STORE,
            COMPONENT.BIN,
            CHANGE.ACTOR_NAME)
        .from(SPARE_HELD)
        .join(SPARE_RESERVATION)
        .on(SPARE_RESERVATION.ID.eq(SPARE_HELD.RESERVATION_ID))
        .join(POINT)
        .on(POINT.ID.eq(SPARE_RESERVATION.POINT_ID))
        .join(COMPONENT)
        .on(COMPONENT.ID.eq(SPARE_HELD.COMPONENT_ID))
        .join(CHANGE)
        .on(CHANGE.ID.eq(SPARE_RESERVATION.CHANGE_ID))
        .where(which)
        .orderBy(COMPONENT.STORE, COMPONENT.BIN, COMPONENT.LABEL_KEY, COMPONENT.ID)
        .fetch(SpareStore::held);
  }

  private static Held held(Record row) {
    BigDecimal metres = row.get(COMPONENT.LENGTH_M);
    String length = metres == null ? "" : ", " + new Length(metres).inMetres();
    return new Held(
        row.get(SPARE_RESERVATION.ID),
        row.get(SPARE_RESERVATION.OUTAGE_ID),
        row.get(SPARE_RESERVATION.POINT_ID),
        row.get(POINT.TAG),
        row.get(SPARE_RESERVATION.SLOT),
        row.get(SPARE_RESERVATION.COMPONENT_ID),
        row.get(COMPONENT.LABEL),
        row.get(COMPONENT.KIND) + length,
        row.get(COMPONENT.STORE),
        row.get(COMPONENT.BIN),
        row.get(SPARE_RESERVATION.VERDICT),
        row.get(SPARE_RESERVATION.PROOF),
        row.get(CHANGE.ACTOR_NAME));
  }
}
