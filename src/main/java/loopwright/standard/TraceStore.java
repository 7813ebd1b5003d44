package loopwright.standard;

import static loopwright.db.gen.Tables.STANDARD_CERTIFICATE;
import static loopwright.db.gen.Tables.STANDARD_EVENT;
import static loopwright.db.gen.Tables.STANDARD_TRACE;

import java.util.List;
import java.util.Objects;
import loopwright.db.Tx;
import loopwright.db.gen.tables.StandardCertificate;
import loopwright.db.gen.tables.records.StandardTraceRecord;
import org.jooq.DSLContext;

/** Against what working standards were calibrated and checked. Insert-only. */
final class TraceStore {
  private static final StandardCertificate BY = STANDARD_CERTIFICATE.as("by_certificate");

  void ofCertificate(Tx tx, long certificate, long byCertificate) {
    StandardTraceRecord row = tx.row(STANDARD_TRACE);
    row.setCertificateId(certificate);
    row.setByCertificateId(byCertificate);
    tx.insert(row);
  }

  void ofEvent(Tx tx, long event, long byCertificate) {
    StandardTraceRecord row = tx.row(STANDARD_TRACE);
    row.setEventId(event);
    row.setByCertificateId(byCertificate);
    tx.insert(row);
  }

  /** All there are: a shop has tens of standards. */
  List<Trace> all(DSLContext sql) {
    return sql.select(
            STANDARD_CERTIFICATE.STANDARD_ID,
            STANDARD_CERTIFICATE.ISSUED_ON,
            STANDARD_EVENT.STANDARD_ID,
            STANDARD_EVENT.HAPPENED_ON,
            STANDARD_TRACE.CERTIFICATE_ID,
            BY.STANDARD_ID,
            BY.ID)
        .from(STANDARD_TRACE)
        .join(BY)
        .on(BY.ID.eq(STANDARD_TRACE.BY_CERTIFICATE_ID))
        .leftJoin(STANDARD_CERTIFICATE)
        .on(STANDARD_CERTIFICATE.ID.eq(STANDARD_TRACE.CERTIFICATE_ID))
        .leftJoin(STANDARD_EVENT)
        .on(STANDARD_EVENT.ID.eq(STANDARD_TRACE.EVENT_ID))
        .orderBy(STANDARD_TRACE.ID)
        .fetch(
            row ->
                new Trace(
                    row.value1() == null ? row.value3() : row.value1(),
                    row.value5(),
                    Objects.requireNonNull(row.value2() == null ? row.value4() : row.value2()),
                    row.value6(),
                    row.value7()));
  }
}
