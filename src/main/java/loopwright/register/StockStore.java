package loopwright.register;

import static loopwright.db.gen.Tables.COMPONENT;
import static loopwright.db.gen.Tables.FAMILY;
import static loopwright.db.gen.Tables.OCCUPANCY;
import static loopwright.db.gen.Tables.PLACEMENT;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import loopwright.db.Tx;
import loopwright.db.gen.tables.Occupancy;
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
  /** Kinds of which each length is a sort of its own. */
  private static final List<String> COUNTED =
      Stream.of(PartKind.PROBE, PartKind.CABLE, PartKind.DRIVER).map(PartKind::word).toList();

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

  List<Stock.Count> counts(DSLContext sql, Collection<FamilyId> families) {
    Field<Integer> inStock = inState(PartState.IN_STOCK);
    Field<Integer> fitted = inState(PartState.FITTED);
    Field<Integer> quarantined = inState(PartState.QUARANTINED);
    return sql.select(
            COMPONENT.FAMILY_ID, COMPONENT.KIND, COMPONENT.LENGTH_M, inStock, fitted, quarantined)
        .from(COMPONENT)
        .where(sorted(families))
        .and(COMPONENT.STATE.ne(PartState.SCRAPPED.word()))
        .groupBy(COMPONENT.FAMILY_ID, COMPONENT.KIND, COMPONENT.LENGTH_M)
        .fetch(
            row ->
                new Stock.Count(
                    sort(row), row.get(inStock), row.get(fitted), row.get(quarantined)));
  }

  private static Field<Integer> inState(PartState state) {
    return DSL.count().filterWhere(COMPONENT.STATE.eq(state.word())).as(state.name());
  }

  private static Condition sorted(Collection<FamilyId> families) {
    return COMPONENT
        .FAMILY_ID
        .in(families.stream().map(FamilyId::number).toList())
        .and(COMPONENT.KIND.in(COUNTED))
        .and(COMPONENT.LENGTH_M.isNotNull());
  }

  private static Sort sort(Record row) {
    return new Sort(
        new FamilyId(row.get(COMPONENT.FAMILY_ID)),
        PartKind.named(row.get(COMPONENT.KIND)).orElseThrow(),
        new Length(row.get(COMPONENT.LENGTH_M)));
  }

  Map<Sort, Integer> putIn(DSLContext sql, Collection<FamilyId> families, Instant since) {
    Field<Integer> howMany = DSL.count().as("how_many");
    return sql.select(COMPONENT.FAMILY_ID, COMPONENT.KIND, COMPONENT.LENGTH_M, howMany)
        .from(OCCUPANCY)
        .join(PLACEMENT)
        .on(PLACEMENT.ID.eq(OCCUPANCY.PLACEMENT_ID))
        .join(COMPONENT)
        .on(COMPONENT.ID.eq(OCCUPANCY.COMPONENT_ID))
        .where(OCCUPANCY.VALID_FROM.ge(Tx.moment(since)))
        .and(PLACEMENT.SOURCE.eq("assembly").or(PLACEMENT.SOURCE.eq("survey").and(replaces())))
        .and(sorted(families))
        .groupBy(COMPONENT.FAMILY_ID, COMPONENT.KIND, COMPONENT.LENGTH_M)
        .fetchMap(StockStore::sort, row -> row.get(howMany));
  }

  /**
   * In place of another part that sat there until then, and from no other loop: so an exchange
   * reads that only a survey tells, as filled sheets do.
   */
  private static Condition replaces() {
    Occupancy before = OCCUPANCY.as("before");
    Condition another =
        DSL.exists(
            DSL.selectOne()
                .from(before)
                .where(before.POINT_ID.eq(OCCUPANCY.POINT_ID))
                .and(before.SLOT.eq(OCCUPANCY.SLOT))
                .and(before.VALID_UNTIL.eq(OCCUPANCY.VALID_FROM))
                .and(before.COMPONENT_ID.ne(OCCUPANCY.COMPONENT_ID)));
    return another.andNotExists(
        DSL.selectOne()
            .from(before)
            .where(before.COMPONENT_ID.eq(OCCUPANCY.COMPONENT_ID))
            .and(before.VALID_UNTIL.eq(OCCUPANCY.VALID_FROM)));
  }

  int ofNoSort(DSLContext sql) {
    int parts = 0;
    for (String kind : COUNTED) { // one by one: kind and state together are found by index
      parts +=
          sql.fetchCount(
              COMPONENT,
              COMPONENT.KIND.eq(kind),
              COMPONENT.STATE.eq(PartState.IN_STOCK.word()),
              COMPONENT.FAMILY_ID.isNull().or(COMPONENT.LENGTH_M.isNull()));
    }
    return parts;
  }
}
