package loopwright.mounting;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.POINT;
import static loopwright.db.gen.Tables.POINT_MOUNTING;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import loopwright.db.Chunks;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.PointMountingRecord;
import org.jooq.DSLContext;
import org.jooq.Record;

/** Versions of mountings; insert-only. */
final class MountingStore {

  /** Makes other changes of this point wait until this one is through. */
  void hold(Tx tx, long point) {
    tx.sql().selectOne().from(POINT).where(POINT.ID.eq(point)).forUpdate().fetch();
  }

  void add(Tx tx, long point, int version, Mounting mounting) {
    PointMountingRecord row = tx.row(POINT_MOUNTING);
    row.setPointId(point);
    row.setVersionNo(version);
    row.setThread(mounting.thread());
    row.setTorque(mounting.torque());
    row.setInsertionDepth(mounting.insertionDepth());
    row.setTerminals(mounting.terminals());
    row.setAccess(mounting.access());
    row.setHours(mounting.hours());
    tx.insert(row);
  }

  /** Newest first. */
  List<Mountings.Version> versions(DSLContext sql, long point) {
    return sql.select(POINT_MOUNTING.asterisk())
        .select(CHANGE.ACTOR_NAME, CHANGE.REASON)
        .from(POINT_MOUNTING)
        .join(CHANGE)
        .on(CHANGE.ID.eq(POINT_MOUNTING.CHANGE_ID))
        .where(POINT_MOUNTING.POINT_ID.eq(point))
        .orderBy(POINT_MOUNTING.VERSION_NO.desc())
        .fetch(
            row ->
                new Mountings.Version(
                    row.get(POINT_MOUNTING.VERSION_NO),
                    mounting(row),
                    row.get(CHANGE.ACTOR_NAME),
                    row.get(CHANGE.REASON)));
  }

  Map<Long, Mounting> newest(DSLContext sql, Collection<Long> points) {
    Map<Long, Mounting> newest = new HashMap<>();
    for (List<Long> some : Chunks.of(new ArrayList<>(points), 500)) {
      sql.select(POINT_MOUNTING.asterisk())
          .from(POINT_MOUNTING)
          .where(POINT_MOUNTING.POINT_ID.in(some))
          .orderBy(POINT_MOUNTING.VERSION_NO)
          .forEach(row -> newest.put(row.get(POINT_MOUNTING.POINT_ID), mounting(row)));
    }
    return newest;
  }

  private static Mounting mounting(Record row) {
    return new Mounting(
        row.get(POINT_MOUNTING.THREAD),
        row.get(POINT_MOUNTING.TORQUE),
        row.get(POINT_MOUNTING.INSERTION_DEPTH),
        row.get(POINT_MOUNTING.TERMINALS),
        row.get(POINT_MOUNTING.ACCESS),
        row.get(POINT_MOUNTING.HOURS));
  }
}
