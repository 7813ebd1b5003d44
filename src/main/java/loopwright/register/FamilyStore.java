package loopwright.register;

import static loopwright.db.gen.Tables.FAMILY;
import static loopwright.db.gen.Tables.FAMILY_LENGTH;
import static loopwright.db.gen.Tables.FAMILY_PAIR;
import static loopwright.db.gen.Tables.TOLERANCE_PROFILE;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.db.Capitals;
import loopwright.db.DbProblem;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.FamilyLengthRecord;
import loopwright.db.gen.tables.records.FamilyPairRecord;
import loopwright.db.gen.tables.records.FamilyRecord;
import loopwright.matching.CableUse;
import loopwright.matching.Output;
import loopwright.matching.PartKind;
import loopwright.matching.Range;
import loopwright.problem.Refused;
import loopwright.units.Length;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/** Families with the lengths they offer and the pairs that are interchangeable. */
final class FamilyStore {

  List<Family> all(DSLContext sql) {
    return fetch(sql, DSL.noCondition());
  }

  Optional<Family> family(DSLContext sql, FamilyId id) {
    return fetch(sql, FAMILY.ID.eq(id.number())).stream().findFirst();
  }

  Optional<Family> named(DSLContext sql, String code) {
    return fetch(sql, FAMILY.CODE_KEY.eq(Capitals.of(sql, code.strip()))).stream().findFirst();
  }

  boolean exists(DSLContext sql, FamilyId id) {
    return sql.fetchExists(FAMILY, FAMILY.ID.eq(id.number()));
  }

  /** Codes by number, for lists. */
  Map<Long, String> codes(DSLContext sql) {
    return sql.select(FAMILY.ID, FAMILY.CODE).from(FAMILY).fetchMap(FAMILY.ID, FAMILY.CODE);
  }

  private static List<Family> fetch(DSLContext sql, Condition which) {
    Map<Long, List<OfferedLength>> lengths =
        sql.select(FAMILY_LENGTH.asterisk())
            .from(FAMILY_LENGTH)
            .join(FAMILY)
            .on(FAMILY.ID.eq(FAMILY_LENGTH.FAMILY_ID))
            .where(which)
            .fetchGroups(FAMILY_LENGTH.FAMILY_ID, row -> offered(row.into(FAMILY_LENGTH)));
    return sql.select(FAMILY.asterisk(), TOLERANCE_PROFILE.CODE)
        .from(FAMILY)
        .leftJoin(TOLERANCE_PROFILE)
        .on(TOLERANCE_PROFILE.ID.eq(FAMILY.PROFILE_ID))
        .where(which)
        .orderBy(FAMILY.CODE_KEY)
        .fetch(
            row ->
                family(
                    row.into(FAMILY),
                    row.get(TOLERANCE_PROFILE.CODE),
                    lengths.getOrDefault(row.get(FAMILY.ID), List.of())));
  }

  FamilyId insert(Tx tx, FamilyDetails details) {
    FamilyRecord row = tx.row(FAMILY);
    fill(tx, row, details);
    FamilyId id = new FamilyId(tx.insert(row).getId());
    details.lengths().forEach(offered -> insert(tx, id, offered));
    return id;
  }

  void update(Tx tx, FamilyId id, int version, FamilyDetails details) {
    FamilyRecord row =
        tx.sql()
            .fetchOptional(FAMILY, FAMILY.ID.eq(id.number()).and(FAMILY.VERSION.eq(version)))
            .orElseThrow(() -> new Refused(DbProblem.STALE));
    fill(tx, row, details);
    row.changed(FAMILY.NAME, true); // the version tells of the lengths, too
    tx.update(row);
    List<OfferedLength> kept =
        tx.sql().fetch(FAMILY_LENGTH, FAMILY_LENGTH.FAMILY_ID.eq(id.number())).stream()
            .filter(length -> keep(tx, length, details))
            .map(FamilyStore::offered)
            .toList();
    details.lengths().stream()
        .filter(offered -> !kept.contains(offered))
        .forEach(offered -> insert(tx, id, offered));
  }

  private static boolean keep(Tx tx, FamilyLengthRecord row, FamilyDetails details) {
    boolean keep = details.lengths().contains(offered(row));
    if (!keep) {
      tx.delete(row);
    }
    return keep;
  }

  private static void insert(Tx tx, FamilyId id, OfferedLength offered) {
    FamilyLengthRecord row = tx.row(FAMILY_LENGTH);
    row.setFamilyId(id.number());
    row.setPart(offered.part().word());
    row.setLengthM(FactRows.metres(offered.length()));
    row.setLengthTyped(offered.typed().typed());
    row.setLengthUnit(offered.typed().unit().symbol());
    tx.insert(row);
  }

  private static void fill(Tx tx, FamilyRecord row, FamilyDetails details) {
    row.setCode(details.code());
    row.setCodeKey(Capitals.of(tx.sql(), details.code()));
    row.setName(details.name());
    row.setMaker(details.maker());
    row.setScaleFactor(details.scaleFactor().declared());
    row.setScaleFactorUnit(details.scaleFactor().unit().symbol());
    row.setRangeFromUm(details.range().fromMicrometres());
    row.setRangeToUm(details.range().toMicrometres());
    row.setStartVolts(details.startVolts());
    row.setTipMm(details.tipMillimetres());
    row.setCableUse(details.cableUse().word());
    row.setTwoCablesAllowed(details.twoCablesAllowed());
    row.setLengthToleranceM(details.lengthTolerance().metres());
    row.setConnectors(FactRows.absent(details.connectors()));
    row.setTargetAlloy(FactRows.absent(details.targetAlloy()));
    row.setOutputQuantity(details.output().unit());
    row.setOutputLowVolts(details.outputVolts().low());
    row.setOutputHighVolts(details.outputVolts().high());
    row.setSelectableSystemLength(details.selectableSystemLength());
    row.setProfileId(profileId(tx.sql(), details.profile()));
    row.setNote(details.note());
  }

  private static @Nullable Long profileId(DSLContext sql, @Nullable String code) {
    if (code == null) {
      return null;
    }
    return sql.select(TOLERANCE_PROFILE.ID)
        .from(TOLERANCE_PROFILE)
        .where(TOLERANCE_PROFILE.CODE.eq(code))
        .fetchOptional(TOLERANCE_PROFILE.ID)
        .orElseThrow(() -> new Refused(RegisterProblem.UNKNOWN_PROFILE, code));
  }

  List<FamilyPair> pairs(DSLContext sql) {
    return sql.selectFrom(FAMILY_PAIR)
        .orderBy(FAMILY_PAIR.ID)
        .fetch(
            row ->
                new FamilyPair(
                    row.getId(),
                    new FamilyId(row.getFamilyId()),
                    new FamilyId(row.getOtherFamilyId()),
                    row.getSaidBy()));
  }

  void insertPair(Tx tx, FamilyId lower, FamilyId higher, String saidBy) {
    FamilyPairRecord row = tx.row(FAMILY_PAIR);
    row.setFamilyId(lower.number());
    row.setOtherFamilyId(higher.number());
    row.setSaidBy(saidBy);
    tx.insert(row);
  }

  void deletePair(Tx tx, long id) {
    tx.sql().fetchOptional(FAMILY_PAIR, FAMILY_PAIR.ID.eq(id)).ifPresent(tx::delete);
  }

  private static OfferedLength offered(FamilyLengthRecord row) {
    return OfferedLength.read(
        PartKind.named(row.getPart()).orElseThrow(),
        row.getLengthTyped(),
        Unit.named(row.getLengthUnit()).orElseThrow());
  }

  private static Family family(
      FamilyRecord row, @Nullable String profile, List<OfferedLength> lengths) {
    ScaleFactor scale =
        new ScaleFactor(row.getScaleFactor(), Unit.named(row.getScaleFactorUnit()).orElseThrow());
    FamilyDetails details =
        FamilyDetails.of(row.getCode(), row.getName(), row.getMaker(), scale)
            .range(new LinearRange(row.getRangeFromUm(), row.getRangeToUm()))
            .startVolts(row.getStartVolts())
            .tipMillimetres(row.getTipMm())
            .cableUse(CableUse.named(row.getCableUse()).orElseThrow())
            .twoCablesAllowed(row.getTwoCablesAllowed())
            .lengthTolerance(new Length(row.getLengthToleranceM()))
            .connectors(FactRows.present(row.getConnectors()))
            .targetAlloy(FactRows.present(row.getTargetAlloy()))
            .output(row.getOutputQuantity().equals("mA") ? Output.CURRENT : Output.VOLTAGE)
            .outputVolts(new Range(row.getOutputLowVolts(), row.getOutputHighVolts()))
            .selectableSystemLength(row.getSelectableSystemLength())
            .profile(profile)
            .note(row.getNote())
            .lengths(lengths)
            .build();
    return new Family(new FamilyId(row.getId()), details, row.getVersion());
  }
}
