package loopwright.fieldcheck;

import static loopwright.db.gen.Tables.GAP_READING;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.TreeSet;
import loopwright.db.Chunks;
import loopwright.db.gen.tables.GapReading;
import loopwright.db.gen.tables.records.GapReadingRecord;
import loopwright.fieldcheck.GapReadings.Beside;
import loopwright.fieldcheck.GapReadings.Counted;
import loopwright.fieldcheck.GapReadings.Notable;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.SelectOnConditionStep;
import org.jooq.impl.DSL;

/**
 * Readings of one change beside those before them, found by the database: a round of a large plant
 * is gone through without holding it. Says the same as {@link
 * loopwright.fieldcheck.GapReading#comparesWith}.
 */
final class BesideStore {
  private static final int AT_ONCE = 500;
  private static final GapReading NOW = GAP_READING.as("now_read");
  private static final GapReading BEFORE = GAP_READING.as("before_read");
  private static final GapReading OLD = GAP_READING.as("old_read");
  private static final GapReading SAME = GAP_READING.as("same_change");

  List<Beside> notable(DSLContext sql, long change, Notable notable, long after, int most) {
    Condition worth =
        DSL.abs(NOW.VOLTS.minus(BEFORE.VOLTS))
            .ge(notable.moved())
            .or(NOW.VOLTS.gt(notable.above()))
            .or(NOW.VOLTS.lt(notable.below()));
    return joined(sql, change)
        .where(NOW.CHANGE_ID.eq(change))
        .and(NOW.ID.gt(after))
        .and(worth)
        .orderBy(NOW.ID)
        .limit(most)
        .fetch(BesideStore::beside);
  }

  List<Beside> ofPoints(DSLContext sql, long change, Collection<Long> points) {
    List<Beside> found = new ArrayList<>();
    for (List<Long> some : Chunks.of(new TreeSet<>(points), AT_ONCE)) {
      found.addAll(
          joined(sql, change)
              .where(NOW.POINT_ID.in(some))
              .and(NOW.CHANGE_ID.eq(change))
              .orderBy(NOW.ID)
              .fetch(BesideStore::beside));
    }
    return found;
  }

  Counted count(DSLContext sql, long change) {
    return sql.select(DSL.count(), DSL.count(BEFORE.ID))
        .from(NOW)
        .leftJoin(BEFORE)
        .on(BEFORE.ID.eq(newestBefore(sql, change)))
        .where(NOW.CHANGE_ID.eq(change))
        .fetchSingle(row -> new Counted(row.value1(), row.value2()));
  }

  private static SelectOnConditionStep<Record> joined(DSLContext sql, long change) {
    return sql.select(NOW.fields())
        .select(BEFORE.fields())
        .from(NOW)
        .leftJoin(BEFORE)
        .on(BEFORE.ID.eq(newestBefore(sql, change)));
  }

  private static Field<Long> newestBefore(DSLContext sql, long change) {
    return DSL.field(
        DSL.select(OLD.ID)
            .from(OLD)
            .where(OLD.POINT_ID.eq(NOW.POINT_ID))
            .and(OLD.READ_AT.lt(beginning(sql, change)))
            .and(OLD.MACHINE_STATE.eq(NOW.MACHINE_STATE))
            .and(OLD.TAPPING_POINT.eq(NOW.TAPPING_POINT))
            .and(warmthCompares())
            .orderBy(OLD.READ_AT.desc(), OLD.ID.desc())
            .limit(1));
  }

  private static Condition warmthCompares() {
    String unknown = Warmth.NOT_RECORDED.word();
    return OLD.WARMTH.eq(NOW.WARMTH).or(OLD.WARMTH.eq(unknown)).or(NOW.WARMTH.eq(unknown));
  }

  /** When the first reading of that state was taken in this change; asked once. */
  private static Field<OffsetDateTime> beginning(DSLContext sql, long change) {
    Field<OffsetDateTime> none = DSL.val(null, SAME.READ_AT);
    Field<OffsetDateTime> beginning = none;
    for (var row :
        sql.select(SAME.MACHINE_STATE, DSL.min(SAME.READ_AT))
            .from(SAME)
            .where(SAME.CHANGE_ID.eq(change))
            .groupBy(SAME.MACHINE_STATE)) {
      beginning =
          DSL.when(NOW.MACHINE_STATE.eq(row.value1()), DSL.val(row.value2(), SAME.READ_AT))
              .otherwise(beginning);
    }
    return beginning;
  }

  private static Beside beside(Record row) {
    GapReadingRecord before = row.into(BEFORE);
    return new Beside(
        GapReadingStore.reading(row.into(NOW)),
        before.getId() == null ? null : GapReadingStore.reading(before));
  }
}
