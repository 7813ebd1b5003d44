package loopwright.calibration;

import static loopwright.db.gen.Tables.CALIBRATION;
import static loopwright.db.gen.Tables.CALIBRATION_STANDARD;
import static loopwright.db.gen.Tables.STANDARD_CERTIFICATE;

import java.util.Collection;
import java.util.List;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.CalibrationStandardRecord;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.impl.DSL;

/** Which equipment calibrations were made with, under which certificates. Insert-only. */
final class MadeWithStore {
  private MadeWithStore() {}

  static void insert(Tx tx, long calibration, Collection<Long> certificates) {
    for (long certificate : certificates) {
      CalibrationStandardRecord row = tx.row(CALIBRATION_STANDARD);
      row.setCalibrationId(calibration);
      row.setCertificateId(certificate);
      tx.insert(row);
    }
  }

  /** Numbers of certificates, in rising order. */
  static List<Long> certificates(DSLContext sql, long calibration) {
    return sql.select(CALIBRATION_STANDARD.CERTIFICATE_ID)
        .from(CALIBRATION_STANDARD)
        .where(CALIBRATION_STANDARD.CALIBRATION_ID.eq(calibration))
        .orderBy(CALIBRATION_STANDARD.CERTIFICATE_ID)
        .fetch(CALIBRATION_STANDARD.CERTIFICATE_ID);
  }

  /** Calibrations made on one certificate. */
  static Condition madeOn(long certificate) {
    return CALIBRATION.ID.in(
        DSL.select(CALIBRATION_STANDARD.CALIBRATION_ID)
            .from(CALIBRATION_STANDARD)
            .where(CALIBRATION_STANDARD.CERTIFICATE_ID.eq(certificate)));
  }

  /** Calibrations made with a standard, under whichever certificate. */
  static Condition madeWith(long standard) {
    return CALIBRATION.ID.in(
        DSL.select(CALIBRATION_STANDARD.CALIBRATION_ID)
            .from(CALIBRATION_STANDARD)
            .join(STANDARD_CERTIFICATE)
            .on(STANDARD_CERTIFICATE.ID.eq(CALIBRATION_STANDARD.CERTIFICATE_ID))
            .where(STANDARD_CERTIFICATE.STANDARD_ID.eq(standard)));
  }
}
