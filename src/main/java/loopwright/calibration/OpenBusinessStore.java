package loopwright.calibration;

import static loopwright.db.gen.Tables.CALIBRATION;

import java.time.Duration;
import java.time.Instant;
import loopwright.db.Tx;
import loopwright.db.gen.tables.Calibration;
import org.jooq.Condition;
import org.jooq.impl.DSL;

/** Which calibrations lack their other half. Only what people entered counts, not files. */
final class OpenBusinessStore {
  private static final Calibration OTHER = CALIBRATION.as("other");

  /**
   * An as found and the as left before it belong to different jobs when so far apart; own choice.
   */
  static final Duration ONE_JOB = Duration.ofDays(60);

  private OpenBusinessStore() {}

  /** Entered by a person, of what was fitted at a point, and not superseded. */
  private static Condition counts() {
    return CALIBRATION
        .ORIGIN
        .eq("entered")
        .and(CalibrationStore.asFitted())
        .and(SupersededStore.stands());
  }

  private static Condition samePoint() {
    return OTHER.POINT_ID.eq(CALIBRATION.POINT_ID).and(OTHER.SETUP.isNull());
  }

  /** As found of a point where nothing was calibrated since. */
  static Condition foundWithoutLeft() {
    return counts()
        .and(CalibrationStore.stage(Stage.AS_FOUND))
        .andNotExists(
            DSL.selectOne()
                .from(OTHER)
                .where(samePoint())
                .and(OTHER.MEASURED_AT.ge(CALIBRATION.MEASURED_AT))
                .and(OTHER.ID.ne(CALIBRATION.ID)));
  }

  /** The last as left of a point that was calibrated before, with no as found in the same job. */
  static Condition leftWithoutFound() {
    return counts()
        .and(CalibrationStore.stage(Stage.AS_LEFT))
        .andExists(
            DSL.selectOne()
                .from(OTHER)
                .where(samePoint())
                .and(OTHER.MEASURED_AT.lt(CALIBRATION.MEASURED_AT)))
        .andNotExists(
            DSL.selectOne()
                .from(OTHER)
                .where(samePoint())
                .and(OTHER.STAGE.eq(Stage.AS_FOUND.word()))
                .and(OTHER.MEASURED_AT.le(CALIBRATION.MEASURED_AT))
                .and(
                    OTHER.MEASURED_AT.ge(
                        DSL.field(
                            "{0} - INTERVAL '60' DAY",
                            CALIBRATION.MEASURED_AT.getDataType(), CALIBRATION.MEASURED_AT))))
        .andNotExists(
            DSL.selectOne()
                .from(OTHER)
                .where(samePoint())
                .and(OTHER.MEASURED_AT.gt(CALIBRATION.MEASURED_AT)));
  }

  static Condition since(Instant moment) {
    return CALIBRATION.MEASURED_AT.ge(Tx.moment(moment));
  }
}
