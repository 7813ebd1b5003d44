package loopwright.datasheet;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.DATA_SHEET;

import java.math.BigDecimal;
import java.util.List;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.DataSheetRecord;
import loopwright.matching.Approval;
import loopwright.matching.AreaClass;
import loopwright.matching.Connector;
import loopwright.matching.Entity;
import loopwright.matching.PartKind;
import loopwright.matching.PartSheet;
import loopwright.matching.Range;
import loopwright.register.ChangeNote;
import loopwright.register.FamilyId;
import loopwright.units.Numbers;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/** Versions of data sheets. */
final class SheetStore {

  /** The newest version of each, families' first. */
  List<DataSheet> newest(DSLContext sql) {
    return fetch(
        sql,
        DSL.row(DATA_SHEET.SUBJECT_KEY, DATA_SHEET.VERSION_NO)
            .in(
                DSL.select(DATA_SHEET.SUBJECT_KEY, DSL.max(DATA_SHEET.VERSION_NO))
                    .from(DATA_SHEET)
                    .groupBy(DATA_SHEET.SUBJECT_KEY)));
  }

  /** Every version, the newest first. */
  List<DataSheet> versions(DSLContext sql, Subject subject) {
    return fetch(sql, DATA_SHEET.SUBJECT_KEY.eq(subject.key()));
  }

  private static List<DataSheet> fetch(DSLContext sql, Condition which) {
    return sql.select(DATA_SHEET.asterisk(), CHANGE.asterisk())
        .from(DATA_SHEET)
        .join(CHANGE)
        .on(CHANGE.ID.eq(DATA_SHEET.CHANGE_ID))
        .where(which)
        .orderBy(DATA_SHEET.SUBJECT_KEY, DATA_SHEET.VERSION_NO.desc())
        .fetch(SheetStore::sheet);
  }

  void insert(Tx tx, Subject subject, int version, SheetDetails details) {
    DataSheetRecord row = tx.row(DATA_SHEET);
    row.setSubjectKey(subject.key());
    row.setVersionNo(version);
    row.setKind(subject.kind().word());
    if (subject.family() == null) {
      row.setMaker(subject.maker());
      row.setModel(subject.model());
    } else {
      row.setFamilyId(subject.family().number());
    }
    fill(row, details);
    tx.insert(row);
  }

  private static void fill(DataSheetRecord row, SheetDetails details) {
    PartSheet sheet = details.sheet();
    row.setTowardProbe(text(sheet.towardProbe()));
    row.setTowardDriver(text(sheet.towardDriver()));
    row.setCelsiusLow(sheet.celsius().low());
    row.setCelsiusHigh(sheet.celsius().high());
    Approval approval = sheet.approval();
    if (approval != null) {
      row.setCertificate(approval.certificate());
      row.setProtectionLevel(approval.level().word());
      row.setGasGroup(approval.group().name());
      row.setTemperatureClass(approval.temperature().name());
      row.setIntrinsicallySafe(approval.intrinsicallySafe());
      row.setCoversChain(approval.coversChain());
    }
    Entity entity = sheet.entity();
    row.setEntityVolts(entity.volts());
    row.setEntityMilliamperes(entity.milliamperes());
    row.setEntityMilliwatts(entity.milliwatts());
    row.setEntityNanofarads(entity.nanofarads());
    row.setEntityMicrohenries(entity.microhenries());
    row.setSupplyLowVolts(details.supplyVolts().low());
    row.setSupplyHighVolts(details.supplyVolts().high());
    row.setSource(details.source());
  }

  private static @Nullable String text(@Nullable Connector connector) {
    return connector == null ? null : connector.toString();
  }

  private static DataSheet sheet(Record joined) {
    DataSheetRecord row = joined.into(DATA_SHEET);
    PartKind kind = PartKind.named(row.getKind()).orElseThrow();
    Subject subject =
        row.getFamilyId() == null
            ? Subject.ofModel(kind, row.getMaker(), row.getModel())
            : Subject.ofFamily(kind, new FamilyId(row.getFamilyId()));
    PartSheet sheet =
        new PartSheet(
            connector(row.getTowardProbe()),
            connector(row.getTowardDriver()),
            range(row.getCelsiusLow(), row.getCelsiusHigh()),
            approval(row),
            entity(row));
    Range supply = range(row.getSupplyLowVolts(), row.getSupplyHighVolts());
    ChangeNote made =
        new ChangeNote(
            joined.get(CHANGE.ID),
            joined.get(CHANGE.MADE_AT).toInstant(),
            joined.get(CHANGE.ACTOR_NAME),
            joined.get(CHANGE.WHAT),
            joined.get(CHANGE.REASON));
    return new DataSheet(
        subject, row.getVersionNo(), new SheetDetails(sheet, supply, row.getSource()), made);
  }

  private static @Nullable Connector connector(@Nullable String text) {
    return text == null ? null : Connector.read(text).orElseThrow();
  }

  private static @Nullable Approval approval(DataSheetRecord row) {
    if (row.getProtectionLevel() == null) {
      return null;
    }
    return new Approval(
        row.getCertificate() == null ? "" : row.getCertificate(),
        Approval.Level.named(row.getProtectionLevel()).orElseThrow(),
        AreaClass.GasGroup.named(row.getGasGroup()).orElseThrow(),
        AreaClass.TemperatureClass.named(row.getTemperatureClass()).orElseThrow(),
        row.getIntrinsicallySafe(),
        row.getCoversChain());
  }

  private static Entity entity(DataSheetRecord row) {
    return new Entity(
        plain(row.getEntityVolts()),
        plain(row.getEntityMilliamperes()),
        plain(row.getEntityMilliwatts()),
        plain(row.getEntityNanofarads()),
        plain(row.getEntityMicrohenries()));
  }

  private static Range range(@Nullable BigDecimal low, @Nullable BigDecimal high) {
    return new Range(plain(low), plain(high));
  }

  private static @Nullable BigDecimal plain(@Nullable BigDecimal number) {
    return number == null ? null : new BigDecimal(Numbers.plain(number));
  }
}
