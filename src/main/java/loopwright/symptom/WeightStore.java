package loopwright.symptom;

import static loopwright.db.gen.Tables.CAUSE_WEIGHT;
import static loopwright.db.gen.Tables.CAUSE_WEIGHTS;
import static loopwright.db.gen.Tables.CHANGE;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.cause.Cause;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.CauseWeightRecord;
import loopwright.db.gen.tables.records.CauseWeightsRecord;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.SelectJoinStep;

/** Versions of the weights of causes. Insert-only. */
final class WeightStore {

  /**
   * A version.
   *
   * @param builtIn whether it goes back to the weights of the program
   */
  record Version(long id, boolean builtIn, Instant at, String who, String reason) {}

  /**
   * @param weights empty to go back to the built-in ones
   */
  void add(Tx tx, Map<Cause, BigDecimal> weights) {
    CauseWeightsRecord version = tx.row(CAUSE_WEIGHTS);
    version.setBuiltIn(weights.isEmpty());
    long id = tx.insert(version).getId();
    weights.forEach(
        (cause, weight) -> {
          CauseWeightRecord row = tx.row(CAUSE_WEIGHT);
          row.setVersionId(id);
          row.setCause(cause.label());
          row.setWeight(weight);
          tx.insert(row);
        });
  }

  Optional<Version> newest(DSLContext sql) {
    return newest(sql, 1).stream().findFirst();
  }

  /** Newest first. */
  List<Version> newest(DSLContext sql, int most) {
    return versions(sql).orderBy(CAUSE_WEIGHTS.ID.desc()).limit(most).fetch(WeightStore::version);
  }

  private static SelectJoinStep<? extends Record> versions(DSLContext sql) {
    return sql.select(
            CAUSE_WEIGHTS.ID,
            CAUSE_WEIGHTS.BUILT_IN,
            CHANGE.MADE_AT,
            CHANGE.ACTOR_NAME,
            CHANGE.REASON)
        .from(CAUSE_WEIGHTS)
        .join(CHANGE)
        .on(CHANGE.ID.eq(CAUSE_WEIGHTS.CHANGE_ID));
  }

  private static Version version(Record row) {
    return new Version(
        row.get(CAUSE_WEIGHTS.ID),
        row.get(CAUSE_WEIGHTS.BUILT_IN),
        row.get(CHANGE.MADE_AT).toInstant(),
        row.get(CHANGE.ACTOR_NAME),
        row.get(CHANGE.REASON));
  }

  /** By label. */
  Map<String, BigDecimal> weights(DSLContext sql, long version) {
    return sql.select(CAUSE_WEIGHT.CAUSE, CAUSE_WEIGHT.WEIGHT)
        .from(CAUSE_WEIGHT)
        .where(CAUSE_WEIGHT.VERSION_ID.eq(version))
        .fetchMap(CAUSE_WEIGHT.CAUSE, CAUSE_WEIGHT.WEIGHT);
  }
}
