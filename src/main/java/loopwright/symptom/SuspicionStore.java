package loopwright.symptom;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.POINT;
import static loopwright.db.gen.Tables.SUSPICION;
import static loopwright.db.gen.Tables.SUSPICION_WITHDRAWN;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import loopwright.db.Chunks;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.SuspicionRecord;
import loopwright.db.gen.tables.records.SuspicionWithdrawnRecord;
import org.jooq.DSLContext;
import org.jooq.impl.DSL;

/** Suspicions and how they were settled. Insert-only. */
final class SuspicionStore {

  long add(Tx tx, long point, String cause, int percent, String asked, String note) {
    SuspicionRecord row = tx.row(SUSPICION);
    row.setPointId(point);
    row.setCause(cause);
    row.setPercent(percent);
    row.setAsked(asked);
    row.setNote(note);
    return tx.insert(row).getId();
  }

  void withdraw(Tx tx, long suspicion, String reason) {
    SuspicionWithdrawnRecord row = tx.row(SUSPICION_WITHDRAWN);
    row.setSuspicionId(suspicion);
    row.setReason(reason);
    tx.insert(row);
  }

  /** Those of these loops that nobody settled, newest first. */
  List<Suspicion> standing(DSLContext sql, Collection<Long> points) {
    List<Suspicion> standing = new ArrayList<>();
    for (List<Long> some : Chunks.of(points, 500)) {
      standing.addAll(
          sql.select(SUSPICION.asterisk())
              .select(POINT.TAG, CHANGE.ACTOR_NAME, CHANGE.MADE_AT)
              .from(SUSPICION)
              .join(POINT)
              .on(POINT.ID.eq(SUSPICION.POINT_ID))
              .join(CHANGE)
              .on(CHANGE.ID.eq(SUSPICION.CHANGE_ID))
              .where(SUSPICION.POINT_ID.in(some))
              .andNotExists(
                  DSL.selectOne()
                      .from(SUSPICION_WITHDRAWN)
                      .where(SUSPICION_WITHDRAWN.SUSPICION_ID.eq(SUSPICION.ID)))
              .orderBy(SUSPICION.ID.desc())
              .fetch(
                  row ->
                      new Suspicion(
                          row.get(SUSPICION.ID),
                          row.get(SUSPICION.POINT_ID),
                          row.get(POINT.TAG),
                          row.get(SUSPICION.CAUSE),
                          row.get(SUSPICION.PERCENT),
                          row.get(SUSPICION.ASKED),
                          row.get(SUSPICION.NOTE),
                          row.get(CHANGE.ACTOR_NAME),
                          row.get(CHANGE.MADE_AT).toInstant())));
    }
    return standing;
  }
}
