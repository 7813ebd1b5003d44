package loopwright.register;

import static loopwright.db.gen.Tables.COMPONENT;
import static loopwright.db.gen.Tables.FAMILY;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import loopwright.matching.Evidence;
import loopwright.matching.KnownLength;
import loopwright.matching.PartKind;
import loopwright.matching.PartState;
import loopwright.units.Length;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.impl.DSL;

/** What lies on the shelves. */
final class StockStore {

  private static final List<String> PROVES =
      Stream.of(Evidence.values()).filter(Evidence::proves).map(Evidence::word).toList();

  /** Counted by the database: of one sort there may be thousands. */
  List<Stock.Alike> alike(DSLContext sql, Collection<String> families) {
    Field<Long> proved =
        DSL.min(COMPONENT.ID).filterWhere(COMPONENT.LENGTH_EVIDENCE.in(PROVES)).as("proved");
    Field<Long> any = DSL.min(COMPONENT.ID).as("any_of_them");
    Field<Integer> howMany = DSL.count().as("how_many");
    return sql.select(COMPONENT.KIND, FAMILY.CODE, COMPONENT.LENGTH_M, proved, any, howMany)
        .from(COMPONENT)
        .join(FAMILY)
        .on(FAMILY.ID.eq(COMPONENT.FAMILY_ID))
        .where(usable(families))
        .groupBy(COMPONENT.KIND, FAMILY.CODE, COMPONENT.LENGTH_M)
        .orderBy(COMPONENT.KIND, FAMILY.CODE, COMPONENT.LENGTH_M)
        .fetch(
            row ->
                new Stock.Alike(
                    PartKind.named(row.get(COMPONENT.KIND)).orElseThrow(),
                    row.get(FAMILY.CODE),
                    new Length(row.get(COMPONENT.LENGTH_M)),
                    new ComponentId(row.get(proved) == null ? row.get(any) : row.get(proved)),
                    row.get(howMany)));
  }

  private static Condition usable(Collection<String> families) {
    List<String> keys = families.stream().map(code -> code.toUpperCase(Locale.ROOT)).toList();
    return FAMILY
        .CODE_KEY
        .in(keys)
        .and(COMPONENT.STATE.eq(PartState.IN_STOCK.word()))
        .and(COMPONENT.LENGTH_M.isNotNull());
  }

  /** Parts in stock of those families whose length is known, by label. */
  List<Stock.Lying> lying(DSLContext sql, Collection<String> families) {
    return sql.select(
            COMPONENT.ID,
            COMPONENT.LABEL,
            COMPONENT.KIND,
            FAMILY.CODE,
            COMPONENT.LENGTH_M,
            COMPONENT.LENGTH_EVIDENCE,
            COMPONENT.STORE,
            COMPONENT.BIN)
        .from(COMPONENT)
        .join(FAMILY)
        .on(FAMILY.ID.eq(COMPONENT.FAMILY_ID))
        .where(usable(families))
        .orderBy(COMPONENT.LABEL_KEY, COMPONENT.ID)
        .fetch(StockStore::lying);
  }

  private static Stock.Lying lying(Record row) {
    return new Stock.Lying(
        new ComponentId(row.get(COMPONENT.ID)),
        row.get(COMPONENT.LABEL),
        PartKind.named(row.get(COMPONENT.KIND)).orElseThrow(),
        row.get(FAMILY.CODE),
        new KnownLength(
            new Length(row.get(COMPONENT.LENGTH_M)),
            Evidence.named(row.get(COMPONENT.LENGTH_EVIDENCE)).orElseThrow()),
        new Shelf(row.get(COMPONENT.STORE), row.get(COMPONENT.BIN)));
  }
}
