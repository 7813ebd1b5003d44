package loopwright.standard;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.REFERENCE_STANDARD;
import static loopwright.db.gen.Tables.STANDARD_CERTIFICATE;
import static loopwright.db.gen.Tables.STANDARD_EVENT;
import static loopwright.db.gen.Tables.STANDARD_RANGE;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.ReferenceStandardRecord;
import loopwright.db.gen.tables.records.StandardCertificateRecord;
import loopwright.db.gen.tables.records.StandardEventRecord;
import loopwright.db.gen.tables.records.StandardRangeRecord;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.Unit;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/** Reference standards, their certificates and events. Insert-only. */
final class StandardStore {

  static String key(String code) {
    return code.strip().toUpperCase(Locale.ROOT);
  }

  long add(Tx tx, Standard fresh) {
    ReferenceStandardRecord row = tx.row(REFERENCE_STANDARD);
    row.setCode(fresh.code());
    row.setCodeKey(key(fresh.code()));
    row.setKind(fresh.kind().word());
    row.setMaker(fresh.maker());
    row.setModel(fresh.model());
    row.setSerial(fresh.serial());
    row.setNote(fresh.note());
    return tx.insert(row).getId();
  }

  long add(Tx tx, long standard, Certificate certificate) {
    StandardCertificateRecord row = tx.row(STANDARD_CERTIFICATE);
    row.setStandardId(standard);
    row.setNumber(certificate.number());
    row.setIssuer(certificate.issuer());
    row.setIssuedOn(certificate.issuedOn());
    row.setDueOn(certificate.dueOn());
    row.setCoverageFactor(certificate.coverageFactor());
    row.setNote(certificate.note());
    long id = tx.insert(row).getId();
    certificate.ranges().forEach(range -> add(tx, id, range));
    return id;
  }

  private static void add(Tx tx, long certificate, CertifiedRange range) {
    StandardRangeRecord row = tx.row(STANDARD_RANGE);
    row.setCertificateId(certificate);
    row.setRangeNo((short) range.number());
    row.setUnit(range.unit().symbol());
    row.setLowTyped(range.low().typed());
    row.setLow(range.low().canonical());
    row.setHighTyped(range.high().typed());
    row.setHigh(range.high().canonical());
    row.setCorrectionTyped(range.correction().typed());
    row.setCorrection(range.correction().canonical());
    row.setUncertaintyTyped(range.uncertainty().typed());
    row.setUncertainty(range.uncertainty().canonical());
    range
        .scalePercent()
        .ifPresent(
            scale -> {
              row.setScaleTyped(scale.typed());
              row.setScalePercent(scale.amount().doubleValue());
            });
    range
        .resolution()
        .ifPresent(
            step -> {
              row.setResolutionTyped(step.typed());
              row.setResolution(step.canonical());
            });
    tx.insert(row);
  }

  long add(Tx tx, long standard, StandardEvent event) {
    StandardEventRecord row = tx.row(STANDARD_EVENT);
    row.setStandardId(standard);
    row.setKind(event.kind().word());
    row.setHappenedOn(event.on());
    row.setNote(event.note());
    return tx.insert(row).getId();
  }

  List<Standard> all(DSLContext sql) {
    return fetch(sql, DSL.noCondition());
  }

  Optional<Standard> coded(DSLContext sql, String code) {
    return fetch(sql, REFERENCE_STANDARD.CODE_KEY.eq(key(code))).stream().findFirst();
  }

  /** Those that these certificates belong to. */
  List<Standard> withCertificates(DSLContext sql, Collection<Long> certificates) {
    return fetch(
        sql,
        REFERENCE_STANDARD.ID.in(
            DSL.select(STANDARD_CERTIFICATE.STANDARD_ID)
                .from(STANDARD_CERTIFICATE)
                .where(STANDARD_CERTIFICATE.ID.in(certificates))));
  }

  private static List<Standard> fetch(DSLContext sql, Condition which) {
    var found =
        sql.selectFrom(REFERENCE_STANDARD)
            .where(which)
            .orderBy(REFERENCE_STANDARD.CODE_KEY)
            .fetch();
    List<Long> ids = found.getValues(REFERENCE_STANDARD.ID);
    Map<Long, List<Certificate>> certificates = certificates(sql, ids);
    Map<Long, List<StandardEvent>> events = events(sql, ids);
    return found.map(
        row ->
            new Standard(
                row.getId(),
                row.getCode(),
                StandardKind.named(row.getKind()),
                row.getMaker(),
                row.getModel(),
                row.getSerial(),
                row.getNote(),
                certificates.getOrDefault(row.getId(), List.of()),
                events.getOrDefault(row.getId(), List.of())));
  }

  private static Map<Long, List<Certificate>> certificates(DSLContext sql, List<Long> standards) {
    var found =
        sql.selectFrom(STANDARD_CERTIFICATE)
            .where(STANDARD_CERTIFICATE.STANDARD_ID.in(standards))
            .orderBy(STANDARD_CERTIFICATE.ISSUED_ON.desc(), STANDARD_CERTIFICATE.ID.desc())
            .fetch();
    Map<Long, List<CertifiedRange>> ranges =
        sql.selectFrom(STANDARD_RANGE)
            .where(STANDARD_RANGE.CERTIFICATE_ID.in(found.getValues(STANDARD_CERTIFICATE.ID)))
            .orderBy(STANDARD_RANGE.CERTIFICATE_ID, STANDARD_RANGE.RANGE_NO)
            .fetchGroups(STANDARD_RANGE.CERTIFICATE_ID, StandardStore::range);
    return found.intoGroups(
        STANDARD_CERTIFICATE.STANDARD_ID,
        row -> {
          StandardCertificateRecord one = row.into(STANDARD_CERTIFICATE);
          return new Certificate(
              one.getId(),
              one.getNumber(),
              one.getIssuer(),
              one.getIssuedOn(),
              one.getDueOn(),
              new BigDecimal(Numbers.plain(one.getCoverageFactor())),
              ranges.getOrDefault(one.getId(), List.of()),
              one.getNote());
        });
  }

  private static CertifiedRange range(Record any) {
    StandardRangeRecord row = any.into(STANDARD_RANGE);
    Unit unit = Unit.named(row.getUnit()).orElseThrow();
    return new CertifiedRange(
        row.getRangeNo(),
        reported(row.getLowTyped(), unit),
        reported(row.getHighTyped(), unit),
        reported(row.getCorrectionTyped(), unit),
        reported(row.getUncertaintyTyped(), unit),
        Optional.ofNullable(row.getScaleTyped()).map(CertifiedRange.Percent::read),
        optional(row.getResolutionTyped(), unit));
  }

  private static Optional<Reported> optional(@Nullable String typed, Unit unit) {
    return Optional.ofNullable(typed).map(text -> reported(text, unit));
  }

  private static Reported reported(String typed, Unit unit) {
    return Reported.read(typed, unit).orElseThrow();
  }

  private static Map<Long, List<StandardEvent>> events(DSLContext sql, List<Long> standards) {
    return sql.select(STANDARD_EVENT.asterisk(), CHANGE.ACTOR_NAME)
        .from(STANDARD_EVENT)
        .join(CHANGE)
        .on(CHANGE.ID.eq(STANDARD_EVENT.CHANGE_ID))
        .where(STANDARD_EVENT.STANDARD_ID.in(standards))
        .orderBy(STANDARD_EVENT.HAPPENED_ON.desc(), STANDARD_EVENT.ID.desc())
        .fetchGroups(
            STANDARD_EVENT.STANDARD_ID,
            row ->
                new StandardEvent(
                    StandardEvent.Kind.named(row.get(STANDARD_EVENT.KIND)),
                    row.get(STANDARD_EVENT.HAPPENED_ON),
                    row.get(STANDARD_EVENT.NOTE),
                    row.get(CHANGE.ACTOR_NAME)));
  }
}
