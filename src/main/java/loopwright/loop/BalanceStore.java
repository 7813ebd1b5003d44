package loopwright.loop;

import static loopwright.db.gen.Tables.LOOP_VERDICT;
import static loopwright.db.gen.Tables.POINT;

import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.impl.DSL;

/** Which loops' lengths don't add up, as they are judged now. */
final class BalanceStore {

  /**
   * Points in use whose loop has a balance other than zero, in order of their tags.
   *
   * @param train only there; empty for everywhere
   */
  List<Long> off(DSLContext sql, OptionalLong train) {
    Condition where =
        train.isPresent() ? LOOP_VERDICT.TRAIN_ID.eq(train.getAsLong()) : DSL.noCondition();
    return sql.select(LOOP_VERDICT.POINT_ID)
        .from(LOOP_VERDICT)
        .join(POINT)
        .on(POINT.ID.eq(LOOP_VERDICT.POINT_ID))
        .where(LOOP_VERDICT.BALANCE_M.ne(BigDecimal.ZERO))
        .and(POINT.STATE.eq("in use"))
        .and(where)
        .orderBy(POINT.TAG_KEY)
        .fetch(LOOP_VERDICT.POINT_ID);
  }

  /** Trains that have such a loop. */
  Set<Long> trains(DSLContext sql) {
    return sql.selectDistinct(LOOP_VERDICT.TRAIN_ID)
        .from(LOOP_VERDICT)
        .where(LOOP_VERDICT.BALANCE_M.ne(BigDecimal.ZERO))
        .fetchSet(LOOP_VERDICT.TRAIN_ID);
  }
}
