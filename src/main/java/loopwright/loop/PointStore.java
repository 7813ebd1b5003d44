package loopwright.loop;

import static loopwright.db.gen.Tables.MACHINE;
import static loopwright.db.gen.Tables.POINT;
import static loopwright.db.gen.Tables.SITE;
import static loopwright.db.gen.Tables.TRAIN;

import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import loopwright.problem.Refused;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.SelectSeekStep1;
import org.jspecify.annotations.Nullable;

/** Where points are, as far as judging needs to know. */
final class PointStore {
  private static final Condition IN_USE = POINT.STATE.eq("in use");

  /** A point with its train and its site's clock. */
  record Located(
      long point,
      String tag,
      long train,
      String trainCode,
      String site,
      boolean adopting,
      ZoneId zone,
      @Nullable Integer intervalMonths) {
    Judging.Subject subject() {
      return new Judging.Subject(point, tag);
    }
  }

  Located located(DSLContext sql, long point) {
    return fetch(sql, POINT.ID.eq(point)).stream()
        .findFirst()
        .orElseThrow(() -> new Refused(LoopProblem.NO_POINT, point));
  }

  List<Located> located(DSLContext sql, Collection<Long> points) {
    return fetch(sql, POINT.ID.in(points));
  }

  /** Those of the points that are in use. */
  List<Located> inUse(DSLContext sql, Collection<Long> points) {
    return fetch(sql, POINT.ID.in(points).and(IN_USE));
  }

  /** Points in use after that one, in the order of their numbers. */
  List<Located> after(DSLContext sql, long last, int most) {
    // the numbers first, by index: joined to the rest the engine would sort all that follow
    List<Long> next =
        sql.select(POINT.ID)
            .from(POINT)
            .where(POINT.ID.gt(last).and(IN_USE))
            .orderBy(POINT.ID)
            .limit(most)
            .fetch(POINT.ID);
    return next.isEmpty() ? List.of() : located(sql, next);
  }

  private static List<Located> fetch(DSLContext sql, Condition which) {
    return select(sql, which).fetch(PointStore::located);
  }

  private static SelectSeekStep1<?, Long> select(DSLContext sql, Condition which) {
    return sql.select(
            POINT.ID,
            POINT.TAG,
            TRAIN.ID,
            TRAIN.CODE,
            SITE.NAME,
            SITE.ADOPTING,
            SITE.ZONE,
            POINT.INTERVAL_MONTHS)
        .from(POINT)
        .join(MACHINE)
        .on(MACHINE.ID.eq(POINT.MACHINE_ID))
        .join(TRAIN)
        .on(TRAIN.ID.eq(MACHINE.TRAIN_ID))
        .join(SITE)
        .on(SITE.ID.eq(TRAIN.SITE_ID))
        .where(which)
        .orderBy(POINT.ID);
  }

  private static Located located(Record row) {
    return new Located(
        row.get(POINT.ID),
        row.get(POINT.TAG),
        row.get(TRAIN.ID),
        row.get(TRAIN.CODE),
        row.get(SITE.NAME),
        row.get(SITE.ADOPTING),
        ZoneId.of(row.get(SITE.ZONE)),
        months(row.get(POINT.INTERVAL_MONTHS)));
  }

  private static @Nullable Integer months(@Nullable Short months) {
    return months == null ? null : (Integer) months.intValue();
  }
}
