package loopwright.calibration;

import static loopwright.db.gen.Tables.CALIBRATION;

import java.util.Optional;
import loopwright.db.gen.tables.records.CalibrationRecord;
import loopwright.units.Reported;
import loopwright.units.Unit;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Under what calibrations were taken: columns of their rows. */
final class ConditionStore {
  private ConditionStore() {}

  static void fill(CalibrationRecord row, Conditions conditions) {
    conditions
        .temperature()
        .ifPresent(
            t -> {
              row.setTemperatureTyped(t.typed());
              row.setTemperatureUnit(t.unit().symbol());
              row.setTemperatureC(t.canonical());
            });
    conditions
        .runOut()
        .ifPresent(
            r -> {
              row.setRunOutTyped(r.typed());
              row.setRunOutUnit(r.unit().symbol());
              row.setRunOutUm(r.canonical());
            });
    row.setProcedureEdition(conditions.procedure().isEmpty() ? null : conditions.procedure());
  }

  static Conditions of(DSLContext sql, long calibration) {
    return sql.select(
            CALIBRATION.TEMPERATURE_TYPED,
            CALIBRATION.TEMPERATURE_UNIT,
            CALIBRATION.RUN_OUT_TYPED,
            CALIBRATION.RUN_OUT_UNIT,
            CALIBRATION.PROCEDURE_EDITION)
        .from(CALIBRATION)
        .where(CALIBRATION.ID.eq(calibration))
        .fetchSingle(
            row ->
                new Conditions(
                    reported(row.value1(), row.value2()),
                    reported(row.value3(), row.value4()),
                    row.value5() == null ? "" : row.value5()));
  }

  private static Optional<Reported> reported(@Nullable String typed, @Nullable String unit) {
    return typed == null || unit == null
        ? Optional.empty()
        : Unit.named(unit).flatMap(known -> Reported.read(typed, known));
  }
}
