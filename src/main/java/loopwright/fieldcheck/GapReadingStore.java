package loopwright.fieldcheck;

import static loopwright.db.gen.Tables.GAP_READING;
import static loopwright.db.gen.Tables.POINT;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import loopwright.cause.TappingPoint;
import loopwright.db.Chunks;
import loopwright.db.RowByRow;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.GapReadingRecord;
import loopwright.journal.KnownTimeStore;
import loopwright.time.Viewpoint;
import loopwright.units.Reported;
import loopwright.units.Unit;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Result;

/** Gap voltages. Insert-only. */
final class GapReadingStore {
  private static final int AT_ONCE = 1_000;

  /** Until this transaction ends, nobody else keeps a reading of these points. */
  void hold(Tx tx, Collection<Long> points) {
    for (List<Long> some : Chunks.of(new TreeSet<>(points), AT_ONCE)) {
      tx.sql()
          .select(POINT.ID)
          .from(POINT)
          .where(POINT.ID.in(some))
          .orderBy(POINT.ID)
          .forUpdate()
          .fetch();
    }
  }

  long add(Tx tx, NewGapReading fresh) {
    GapReadingRecord row = tx.row(GAP_READING);
    row.setPointId(fresh.point());
    row.setReadAt(Tx.moment(fresh.readAt()));
    row.setReadBy(fresh.readBy());
    row.setVoltsTyped(fresh.volts().typed());
    row.setVoltsUnit(fresh.volts().unit().symbol());
    row.setVolts(fresh.volts().canonical());
    row.setTappingPoint(fresh.tappedAt().label());
    row.setMachineState(fresh.state().word());
    row.setWarmth(fresh.warmth().word());
    row.setRotorPosition(fresh.rotorPosition());
    row.setNote(fresh.note());
    row.setOrigin(fresh.origin());
    return tx.insert(row).getId();
  }

  Optional<GapReading> same(DSLContext sql, NewGapReading fresh) {
    Condition ofMoment =
        GAP_READING
            .POINT_ID
            .eq(fresh.point())
            .and(GAP_READING.READ_AT.eq(Tx.moment(fresh.readAt())));
    return sql.selectFrom(GAP_READING).where(ofMoment).fetch(GapReadingStore::reading).stream()
        .filter(kept -> what(kept).equals(what(fresh)))
        .findFirst();
  }

  /** What makes two readings one. */
  private record What(
      long point, Instant at, Reported volts, TappingPoint tap, MachineState state) {}

  private static What what(GapReading kept) {
    return new What(kept.point(), kept.readAt(), kept.volts(), kept.tappedAt(), kept.state());
  }

  private static What what(NewGapReading fresh) {
    return new What(fresh.point(), fresh.readAt(), fresh.volts(), fresh.tappedAt(), fresh.state());
  }

  /** Those that are neither kept yet nor come twice. */
  List<NewGapReading> withoutKnown(DSLContext sql, List<NewGapReading> all) {
    Set<What> known = new HashSet<>();
    Instant first = all.stream().map(NewGapReading::readAt).min(Instant::compareTo).orElse(null);
    Instant last = all.stream().map(NewGapReading::readAt).max(Instant::compareTo).orElse(null);
    if (first != null && last != null) {
      List<Long> points = all.stream().map(NewGapReading::point).toList();
      fetch(sql, points, taken().between(Tx.moment(first), Tx.moment(last)))
          .forEach(kept -> known.add(what(kept)));
    }
    return all.stream().filter(fresh -> known.add(what(fresh))).toList();
  }

  List<GapReading> ofPoint(DSLContext sql, long point, Viewpoint viewpoint, int most) {
    Result<GapReadingRecord> all =
        sql.selectFrom(GAP_READING)
            .where(GAP_READING.POINT_ID.eq(point))
            .and(GAP_READING.READ_AT.le(Tx.moment(viewpoint.at())))
            .orderBy(GAP_READING.READ_AT.desc(), GAP_READING.ID.desc())
            .limit(viewpoint.asKnownNow() ? most : Integer.MAX_VALUE)
            .fetch();
    Long entry = viewpoint.known();
    Set<Long> known =
        entry == null
            ? Set.of()
            : KnownTimeStore.known(sql, entry, all.getValues(GAP_READING.CHANGE_ID));
    return all.stream()
        .filter(row -> entry == null || known.contains(row.getChangeId()))
        .limit(most)
        .map(GapReadingStore::reading)
        .toList();
  }

  Map<Long, GapReading> newest(
      DSLContext sql, Collection<Long> points, MachineState state, Instant before) {
    Map<Long, GapReading> newest = new HashMap<>();
    for (List<Long> some : Chunks.of(new TreeSet<>(points), AT_ONCE)) {
      sql.selectFrom(GAP_READING)
          .where(GAP_READING.POINT_ID.in(some))
          .and(GAP_READING.MACHINE_STATE.eq(state.word()))
          .and(taken().lt(Tx.moment(before)))
          .orderBy(GAP_READING.READ_AT, GAP_READING.ID)
          .fetch(GapReadingStore::reading)
          .forEach(reading -> newest.put(reading.point(), reading));
    }
    return newest;
  }

  List<GapReading> since(DSLContext sql, Collection<Long> points, Instant from) {
    return fetch(sql, points, taken().ge(Tx.moment(from)));
  }

  private static Field<OffsetDateTime> taken() {
    return RowByRow.of(GAP_READING.READ_AT);
  }

  private static List<GapReading> fetch(DSLContext sql, Collection<Long> points, Condition which) {
    List<GapReading> found = new ArrayList<>();
    for (List<Long> some : Chunks.of(new TreeSet<>(points), AT_ONCE)) {
      found.addAll(
          sql.selectFrom(GAP_READING)
              .where(GAP_READING.POINT_ID.in(some))
              .and(which)
              .orderBy(GAP_READING.READ_AT, GAP_READING.ID)
              .fetch(GapReadingStore::reading));
    }
    return found;
  }

  static GapReading reading(GapReadingRecord row) {
    Unit unit = Unit.named(row.getVoltsUnit()).orElseThrow();
    return new GapReading(
        row.getId(),
        row.getPointId(),
        row.getReadAt().toInstant(),
        row.getReadBy(),
        Reported.read(row.getVoltsTyped(), unit).orElseThrow(),
        TappingPoint.named(row.getTappingPoint()).orElseThrow(),
        MachineState.ofWord(row.getMachineState()),
        Warmth.ofWord(row.getWarmth()),
        row.getRotorPosition(),
        row.getNote(),
        row.getOrigin(),
        row.getChangeId());
  }
}
