package loopwright.calibration;

import static loopwright.db.gen.Tables.CALIBRATION;
import static loopwright.db.gen.Tables.CALIBRATION_SUPERSEDED;
import static loopwright.db.gen.Tables.CHANGE;

import java.util.Collection;
import java.util.Optional;
import java.util.Set;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.CalibrationSupersededRecord;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.impl.DSL;

/** Which calibrations another record stands in the place of. Insert-only. */
final class SupersededStore {
  private SupersededStore() {}

  static void insert(Tx tx, long calibration, long by, String reason) {
    CalibrationSupersededRecord row = tx.row(CALIBRATION_SUPERSEDED);
    row.setCalibrationId(calibration);
    row.setByCalibrationId(by);
    row.setReason(reason);
    tx.insert(row);
  }

  static Optional<Superseded> of(DSLContext sql, long calibration) {
    return sql.select(
            CALIBRATION.NUMBER, CALIBRATION_SUPERSEDED.REASON, CHANGE.ACTOR_NAME, CHANGE.MADE_AT)
        .from(CALIBRATION_SUPERSEDED)
        .join(CALIBRATION)
        .on(CALIBRATION.ID.eq(CALIBRATION_SUPERSEDED.BY_CALIBRATION_ID))
        .join(CHANGE)
        .on(CHANGE.ID.eq(CALIBRATION_SUPERSEDED.CHANGE_ID))
        .where(CALIBRATION_SUPERSEDED.CALIBRATION_ID.eq(calibration))
        .fetchOptional(
            row ->
                new Superseded(row.value1(), row.value2(), row.value3(), row.value4().toInstant()));
  }

  /** Those among them in whose place another stands. */
  static Set<Long> among(DSLContext sql, Collection<Long> calibrations) {
    return sql.select(CALIBRATION_SUPERSEDED.CALIBRATION_ID)
        .from(CALIBRATION_SUPERSEDED)
        .where(CALIBRATION_SUPERSEDED.CALIBRATION_ID.in(calibrations))
        .fetchSet(CALIBRATION_SUPERSEDED.CALIBRATION_ID);
  }

  /** As known now. */
  static Condition stands() {
    return DSL.notExists(
        DSL.selectOne()
            .from(CALIBRATION_SUPERSEDED)
            .where(CALIBRATION_SUPERSEDED.CALIBRATION_ID.eq(CALIBRATION.ID)));
  }
}
