package loopwright.register;

import static loopwright.db.gen.Tables.COMPONENT;
import static loopwright.db.gen.Tables.FAMILY;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import loopwright.matching.Evidence;
import loopwright.matching.KnownLength;
import loopwright.matching.PartKind;
import loopwright.matching.PartState;
import loopwright.units.Length;
import org.jooq.DSLContext;
import org.jooq.Record;

/** What lies on the shelves. */
final class StockStore {

  /** Parts in stock of those families whose length is known, by label. */
  List<Stock.Lying> lying(DSLContext sql, Collection<String> families) {
    List<String> keys = families.stream().map(code -> code.toUpperCase(Locale.ROOT)).toList();
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
        .where(FAMILY.CODE_KEY.in(keys))
        .and(COMPONENT.STATE.eq(PartState.IN_STOCK.word()))
        .and(COMPONENT.LENGTH_M.isNotNull())
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
