package loopwright.loop;

import static loopwright.db.gen.Tables.LOOP_VERDICT;
import static loopwright.db.gen.Tables.TRAIN;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.LoopVerdictRecord;
import loopwright.units.Length;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/** How each loop is judged now. Derived: may be thrown away and worked out again. */
final class StandingStore {

  /**
   * Stores them, read and written in one go; the moment since which one is so stays while verdict
   * and rule stay.
   */
  void put(DSLContext sql, Collection<Standing> standings, Instant judgedAt) {
    Map<Long, LoopVerdictRecord> kept =
        sql.fetch(
                LOOP_VERDICT,
                LOOP_VERDICT.POINT_ID.in(standings.stream().map(Standing::point).toList()))
            .intoMap(LOOP_VERDICT.POINT_ID);
    List<LoopVerdictRecord> rows = new ArrayList<>();
    for (Standing standing : standings) {
      LoopVerdictRecord row = kept.get(standing.point());
      rows.add(filled(row == null ? sql.newRecord(LOOP_VERDICT) : row, standing, judgedAt));
    }
    sql.batchStore(rows).execute();
  }

  private static LoopVerdictRecord filled(
      LoopVerdictRecord row, Standing standing, Instant judgedAt) {
    boolean same =
        standing.verdict().equals(row.getVerdict()) && standing.rule().equals(row.getRule());
    row.setPointId(standing.point());
    row.setTrainId(standing.train());
    row.setUrgency((short) standing.urgency());
    row.setVerdict(standing.verdict());
    row.setRule(standing.rule());
    row.setHeadline(cut(standing.headline()));
    row.setNextStep(cut(standing.nextStep()));
    row.setOwnerRole(standing.ownerRole());
    row.setBalanceM(metres(standing.balance()));
    if (!same) {
      row.setSinceAt(standing.since() == null ? null : Tx.moment(standing.since()));
    }
    row.setDueOn(standing.dueOn());
    row.setReviewAt(standing.reviewAt() == null ? null : Tx.moment(standing.reviewAt()));
    row.setJudgedAt(Tx.moment(judgedAt));
    return row;
  }

  private static @Nullable BigDecimal metres(@Nullable Length balance) {
    return balance == null ? null : balance.metres();
  }

  private static String cut(String sentence) {
    return sentence.length() <= 1000 ? sentence : sentence.substring(0, 999) + "…";
  }

  void remove(DSLContext sql, Collection<Long> points) {
    if (!points.isEmpty()) {
      sql.deleteFrom(LOOP_VERDICT).where(LOOP_VERDICT.POINT_ID.in(points)).execute();
    }
  }

  Optional<Standing> of(DSLContext sql, long point) {
    return sql.fetchOptional(LOOP_VERDICT, LOOP_VERDICT.POINT_ID.eq(point))
        .map(StandingStore::standing);
  }

  List<Standing> of(DSLContext sql, Collection<Long> points) {
    return sql.fetch(LOOP_VERDICT, LOOP_VERDICT.POINT_ID.in(points)).map(StandingStore::standing);
  }

  /**
   * Those that need somebody, worst first, then longest standing.
   *
   * @param which further condition, for filters
   */
  List<Standing> needingSomebody(DSLContext sql, Condition which, int most) {
    return sql.selectFrom(LOOP_VERDICT)
        .where(LOOP_VERDICT.URGENCY.lt((short) Standing.NEEDS_NOBODY))
        .and(which)
        .orderBy(
            LOOP_VERDICT.URGENCY, LOOP_VERDICT.SINCE_AT.asc().nullsFirst(), LOOP_VERDICT.POINT_ID)
        .limit(most)
        .fetch(StandingStore::standing);
  }

  /** Loops whose verdict has become another one by the mere passing of time. */
  List<Long> due(DSLContext sql, Instant now) {
    return sql.select(LOOP_VERDICT.POINT_ID)
        .from(LOOP_VERDICT)
        .where(LOOP_VERDICT.REVIEW_AT.le(Tx.moment(now)))
        .fetch(LOOP_VERDICT.POINT_ID);
  }

  /** How many loops have each verdict. */
  Map<String, Integer> counts(DSLContext sql, Condition which) {
    return sql.select(LOOP_VERDICT.VERDICT, DSL.count())
        .from(LOOP_VERDICT)
        .where(which)
        .groupBy(LOOP_VERDICT.VERDICT)
        .fetchMap(LOOP_VERDICT.VERDICT, DSL.count());
  }

  /** How many loops that need somebody have each verdict. */
  Map<String, Integer> needing(DSLContext sql, Condition which) {
    return counts(sql, which.and(LOOP_VERDICT.URGENCY.lt((short) Standing.NEEDS_NOBODY)));
  }

  /** A train and how many of its loops need somebody. */
  record OfTrain(long train, String code, int loops) {}

  /** Most first. */
  List<OfTrain> needingByTrain(DSLContext sql) {
    return sql.select(TRAIN.ID, TRAIN.CODE, DSL.count())
        .from(LOOP_VERDICT)
        .join(TRAIN)
        .on(TRAIN.ID.eq(LOOP_VERDICT.TRAIN_ID))
        .where(LOOP_VERDICT.URGENCY.lt((short) Standing.NEEDS_NOBODY))
        .groupBy(TRAIN.ID, TRAIN.CODE)
        .orderBy(DSL.count().desc(), TRAIN.CODE)
        .limit(60)
        .fetch(row -> new OfTrain(row.value1(), row.value2(), row.value3()));
  }

  static Condition owner(String role) {
    return LOOP_VERDICT.OWNER_ROLE.eq(role);
  }

  static Condition inTrain(long train) {
    return LOOP_VERDICT.TRAIN_ID.eq(train);
  }

  static Condition inTrains(Collection<Long> trains) {
    return LOOP_VERDICT.TRAIN_ID.in(trains);
  }

  static Condition verdict(String word) {
    return LOOP_VERDICT.VERDICT.eq(word);
  }

  private static Standing standing(LoopVerdictRecord row) {
    return new Standing(
        row.getPointId(),
        row.getTrainId(),
        row.getUrgency(),
        row.getVerdict(),
        row.getRule(),
        row.getHeadline(),
        row.getNextStep(),
        row.getOwnerRole(),
        row.getBalanceM() == null ? null : new Length(row.getBalanceM()),
        row.getSinceAt() == null ? null : row.getSinceAt().toInstant(),
        row.getDueOn(),
        row.getReviewAt() == null ? null : row.getReviewAt().toInstant());
  }
}
