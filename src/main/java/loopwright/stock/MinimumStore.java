package loopwright.stock;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.MINIMUM_STOCK;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.MinimumStockRecord;
import loopwright.matching.PartKind;
import loopwright.register.FamilyId;
import loopwright.register.Sort;
import loopwright.units.Length;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.impl.DSL;

/** Decisions about minimum stock. Insert-only. */
final class MinimumStore {

  void add(Tx tx, Sort sort, int least, String reason) {
    MinimumStockRecord row = tx.row(MINIMUM_STOCK);
    row.setFamilyId(sort.family().number());
    row.setKind(sort.kind().word());
    row.setLengthM(sort.length().metres());
    row.setLeast(least);
    row.setReason(reason);
    tx.insert(row);
  }

  /** What counts now, by sort. */
  Map<Sort, Minimum> now(DSLContext sql) {
    Map<Sort, Minimum> newest = new LinkedHashMap<>();
    fetch(sql, DSL.noCondition()).forEach(minimum -> newest.put(minimum.sort(), minimum));
    return newest;
  }

  /** Every decision about a sort, the newest first. */
  List<Minimum> story(DSLContext sql, Sort sort) {
    List<Minimum> found =
        fetch(
            sql,
            MINIMUM_STOCK
                .FAMILY_ID
                .eq(sort.family().number())
                .and(MINIMUM_STOCK.KIND.eq(sort.kind().word()))
                .and(MINIMUM_STOCK.LENGTH_M.eq(sort.length().metres())));
    Collections.reverse(found);
    return found;
  }

  private static List<Minimum> fetch(DSLContext sql, Condition which) {
    return sql.select(MINIMUM_STOCK.asterisk(), CHANGE.ACTOR_NAME, CHANGE.MADE_AT)
        .from(MINIMUM_STOCK)
        .join(CHANGE)
        .on(CHANGE.ID.eq(MINIMUM_STOCK.CHANGE_ID))
        .where(which)
        .orderBy(MINIMUM_STOCK.ID)
        .fetch(MinimumStore::minimum);
  }

  private static Minimum minimum(Record row) {
    return new Minimum(
        row.get(MINIMUM_STOCK.ID),
        new Sort(
            new FamilyId(row.get(MINIMUM_STOCK.FAMILY_ID)),
            PartKind.named(row.get(MINIMUM_STOCK.KIND)).orElseThrow(),
            new Length(row.get(MINIMUM_STOCK.LENGTH_M))),
        row.get(MINIMUM_STOCK.LEAST),
        row.get(MINIMUM_STOCK.REASON),
        row.get(CHANGE.ACTOR_NAME),
        row.get(CHANGE.MADE_AT).toInstant());
  }
}
