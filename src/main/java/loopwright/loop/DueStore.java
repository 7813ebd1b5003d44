package loopwright.loop;

import static loopwright.db.gen.Tables.LOOP_VERDICT;
import static loopwright.db.gen.Tables.POINT;
import static loopwright.db.gen.Tables.SITE;
import static loopwright.db.gen.Tables.TRAIN;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/** Due dates as they stand in the derived table of standings. */
final class DueStore {
  private static final int TRAINS = 60;

  Optional<LocalDate> of(DSLContext sql, long point) {
    return sql.select(LOOP_VERDICT.DUE_ON)
        .from(LOOP_VERDICT)
        .where(LOOP_VERDICT.POINT_ID.eq(point))
        .and(LOOP_VERDICT.DUE_ON.isNotNull())
        .fetchOptional(LOOP_VERDICT.DUE_ON);
  }

  List<DueLoops.Due> until(DSLContext sql, Instant now, int days, @Nullable Long train, int most) {
    LocalDate last = now.atZone(ZoneOffset.UTC).toLocalDate().plusDays(days);
    Condition which = LOOP_VERDICT.DUE_ON.le(last);
    return sql.select(POINT.TAG, TRAIN.CODE, LOOP_VERDICT.DUE_ON, SITE.ZONE)
        .from(LOOP_VERDICT)
        .join(POINT)
        .on(POINT.ID.eq(LOOP_VERDICT.POINT_ID))
        .join(TRAIN)
        .on(TRAIN.ID.eq(LOOP_VERDICT.TRAIN_ID))
        .join(SITE)
        .on(SITE.ID.eq(TRAIN.SITE_ID))
        .where(train == null ? which : which.and(StandingStore.inTrain(train)))
        .orderBy(LOOP_VERDICT.DUE_ON, LOOP_VERDICT.POINT_ID)
        .limit(most)
        .fetch(row -> due(row, now));
  }

  private static DueLoops.Due due(Record row, Instant now) {
    LocalDate dueOn = Objects.requireNonNull(row.get(LOOP_VERDICT.DUE_ON));
    LocalDate today = now.atZone(ZoneId.of(row.get(SITE.ZONE))).toLocalDate();
    return new DueLoops.Due(row.get(POINT.TAG), row.get(TRAIN.CODE), dueOn, dueOn.isBefore(today));
  }

  List<DueLoops.OverdueTrain> overdueByTrain(DSLContext sql, Instant now) {
    return sql.select(TRAIN.ID, TRAIN.CODE, SITE.NAME, DSL.count(), DSL.min(LOOP_VERDICT.DUE_ON))
        .from(LOOP_VERDICT)
        .join(TRAIN)
        .on(TRAIN.ID.eq(LOOP_VERDICT.TRAIN_ID))
        .join(SITE)
        .on(SITE.ID.eq(TRAIN.SITE_ID))
        .where(overdue(sql, now))
        .groupBy(TRAIN.ID, TRAIN.CODE, SITE.NAME)
        .orderBy(DSL.min(LOOP_VERDICT.DUE_ON), TRAIN.ID)
        .limit(TRAINS)
        .fetch(
            row ->
                new DueLoops.OverdueTrain(
                    row.value1(),
                    row.value2(),
                    row.value3(),
                    row.value4(),
                    Objects.requireNonNull(row.value5())));
  }

  /** Each site has its own day. */
  private static Condition overdue(DSLContext sql, Instant now) {
    return sql.selectDistinct(SITE.ZONE).from(SITE).fetch(SITE.ZONE).stream()
        .map(
            zone ->
                SITE.ZONE
                    .eq(zone)
                    .and(LOOP_VERDICT.DUE_ON.lt(now.atZone(ZoneId.of(zone)).toLocalDate())))
        .reduce(DSL.falseCondition(), Condition::or);
  }
}
