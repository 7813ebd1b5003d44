package loopwright.fieldcheck;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.FIELD_CHECK;
import static loopwright.db.gen.Tables.FIELD_CHECK_ENTRY;
import static loopwright.db.gen.Tables.POINT;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.FieldCheckEntryRecord;
import loopwright.db.gen.tables.records.FieldCheckRecord;
import loopwright.journal.KnownTimeStore;
import loopwright.time.Viewpoint;
import loopwright.units.Reported;
import loopwright.units.Unit;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.Result;

/** Checks and their figures. Insert-only. */
final class CheckStore {

  /** Until this transaction ends, nobody else keeps a check of that point. */
  void hold(Tx tx, long point) {
    tx.sql().select(POINT.ID).from(POINT).where(POINT.ID.eq(point)).forUpdate().fetchSingle();
  }

  long add(
      Tx tx,
      NewCheck fresh,
      Optional<String> fingerprint,
      List<Said> said,
      Optional<Long> profileVersion) {
    FieldCheckRecord row = tx.row(FIELD_CHECK);
    row.setPointId(fresh.point());
    fingerprint.ifPresent(row::setFingerprint);
    row.setKind(fresh.kind().word());
    row.setTakenAt(Tx.moment(fresh.takenAt()));
    row.setTakenBy(fresh.takenBy());
    row.setVerdict(Said.worst(said).word());
    row.setFindings(Said.kept(said));
    row.setNote(fresh.note());
    profileVersion.ifPresent(row::setProfileVersionId);
    long id = tx.insert(row).getId();
    fresh.entries().all().forEach(entered -> add(tx, id, entered));
    return id;
  }

  private static void add(Tx tx, long check, Entered entered) {
    FieldCheckEntryRecord row = tx.row(FIELD_CHECK_ENTRY);
    row.setFieldCheckId(check);
    row.setItem(entered.item());
    row.setRowNo((short) entered.row());
    row.setTyped(entered.typed());
    Reported number = entered.number();
    if (number != null) {
      row.setUnit(number.unit().symbol());
      row.setAmount(number.canonical());
    }
    tx.insert(row);
  }

  Optional<FieldCheck> one(DSLContext sql, long id) {
    return fetch(sql, FIELD_CHECK.ID.eq(id), Viewpoint.LATEST, 1).stream().findFirst();
  }

  List<FieldCheck> ofPoint(DSLContext sql, long point, Viewpoint viewpoint, int most) {
    return fetch(sql, FIELD_CHECK.POINT_ID.eq(point), viewpoint, most);
  }

  /** The last of that kind before a moment. */
  Optional<FieldCheck> before(DSLContext sql, long point, CheckKind kind, Instant moment) {
    Condition which =
        FIELD_CHECK
            .POINT_ID
            .eq(point)
            .and(FIELD_CHECK.KIND.eq(kind.word()))
            .and(FIELD_CHECK.TAKEN_AT.lt(Tx.moment(moment)));
    return fetch(sql, which, Viewpoint.LATEST, 1).stream().findFirst();
  }

  List<FieldCheck> ofMoment(DSLContext sql, NewCheck fresh) {
    Condition which =
        FIELD_CHECK
            .POINT_ID
            .eq(fresh.point())
            .and(FIELD_CHECK.KIND.eq(fresh.kind().word()))
            .and(FIELD_CHECK.TAKEN_AT.eq(Tx.moment(fresh.takenAt())));
    return fetch(sql, which, Viewpoint.LATEST, 100);
  }

  private static List<FieldCheck> fetch(
      DSLContext sql, Condition which, Viewpoint viewpoint, int most) {
    Result<? extends Record> found =
        sql.select(
                FIELD_CHECK.asterisk(), POINT.TAG, CHANGE.ACTOR_NAME, CHANGE.MADE_AT, CHANGE.REASON)
            .from(FIELD_CHECK)
            .join(POINT)
            .on(POINT.ID.eq(FIELD_CHECK.POINT_ID))
            .join(CHANGE)
            .on(CHANGE.ID.eq(FIELD_CHECK.CHANGE_ID))
            .where(which)
            .and(FIELD_CHECK.TAKEN_AT.le(Tx.moment(viewpoint.at())))
            .orderBy(FIELD_CHECK.TAKEN_AT.desc(), FIELD_CHECK.ID.desc())
            .limit(viewpoint.asKnownNow() ? most : Integer.MAX_VALUE)
            .fetch();
    Long entry = viewpoint.known();
    Set<Long> known =
        entry == null
            ? Set.of()
            : KnownTimeStore.known(sql, entry, found.getValues(FIELD_CHECK.CHANGE_ID));
    List<? extends Record> rows =
        found.stream()
            .filter(row -> entry == null || known.contains(row.get(FIELD_CHECK.CHANGE_ID)))
            .limit(most)
            .toList();
    Map<Long, List<Entered>> entries =
        entries(sql, rows.stream().map(row -> row.get(FIELD_CHECK.ID)).toList());
    return rows.stream()
        .map(row -> check(row, entries.getOrDefault(row.get(FIELD_CHECK.ID), List.of())))
        .toList();
  }

  private static Map<Long, List<Entered>> entries(DSLContext sql, List<Long> checks) {
    return sql.selectFrom(FIELD_CHECK_ENTRY)
        .where(FIELD_CHECK_ENTRY.FIELD_CHECK_ID.in(checks))
        .orderBy(FIELD_CHECK_ENTRY.ID)
        .fetchGroups(FIELD_CHECK_ENTRY.FIELD_CHECK_ID, CheckStore::entered);
  }

  private static Entered entered(Record row) {
    String typed = row.get(FIELD_CHECK_ENTRY.TYPED);
    String unit = row.get(FIELD_CHECK_ENTRY.UNIT);
    return new Entered(
        row.get(FIELD_CHECK_ENTRY.ITEM),
        row.get(FIELD_CHECK_ENTRY.ROW_NO),
        typed,
        unit == null ? null : Reported.read(typed, Unit.named(unit).orElseThrow()).orElseThrow());
  }

  private static FieldCheck check(Record row, List<Entered> entries) {
    return new FieldCheck(
        row.get(FIELD_CHECK.ID),
        row.get(FIELD_CHECK.POINT_ID),
        Objects.requireNonNull(row.get(POINT.TAG)),
        Optional.ofNullable(row.get(FIELD_CHECK.FINGERPRINT)),
        CheckKind.ofWord(row.get(FIELD_CHECK.KIND)),
        row.get(FIELD_CHECK.TAKEN_AT).toInstant(),
        row.get(FIELD_CHECK.TAKEN_BY),
        new Entries(entries),
        row.get(FIELD_CHECK.VERDICT),
        Said.read(row.get(FIELD_CHECK.FINDINGS)),
        row.get(FIELD_CHECK.NOTE),
        row.get(CHANGE.ACTOR_NAME),
        row.get(CHANGE.MADE_AT).toInstant(),
        row.get(CHANGE.REASON),
        row.get(FIELD_CHECK.CHANGE_ID),
        Optional.ofNullable(row.get(FIELD_CHECK.PROFILE_VERSION_ID)));
  }
}
