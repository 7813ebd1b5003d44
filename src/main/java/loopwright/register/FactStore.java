package loopwright.register;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.COMPONENT_FACT;
import static loopwright.db.gen.Tables.COMPONENT_FACT_NOW;
import static loopwright.db.gen.Tables.COMPONENT_FACT_RETIRED;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.db.Chunks;
import loopwright.db.DbProblem;
import loopwright.db.RowByRow;
import loopwright.db.Tx;
import loopwright.db.gen.tables.Change;
import loopwright.db.gen.tables.records.ComponentFactRecord;
import loopwright.db.gen.tables.records.ComponentFactRetiredRecord;
import loopwright.journal.KnownTimeStore;
import loopwright.problem.Refused;
import loopwright.time.Span;
import loopwright.time.Viewpoint;
import loopwright.units.Reported;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.Result;
import org.jspecify.annotations.Nullable;

/**
 * Beliefs about parts. {@code component_fact} keeps every belief ever held; {@code
 * component_fact_now} holds those held now, chained so that the database refuses overlaps.
 */
final class FactStore {
  private static final int AT_ONCE = 1_000;
  private static final Change MADE = CHANGE.as("made");
  private static final Change ENDED = CHANGE.as("ended");

  /** Beliefs held now, oldest first. */
  List<Belief> held(DSLContext sql, ComponentId id) {
    return sql.select(COMPONENT_FACT.asterisk())
        .from(COMPONENT_FACT_NOW)
        .join(COMPONENT_FACT)
        .on(COMPONENT_FACT.ID.eq(COMPONENT_FACT_NOW.FACT_ID))
        .where(COMPONENT_FACT_NOW.COMPONENT_ID.eq(id.number()))
        .orderBy(COMPONENT_FACT_NOW.VALID_FROM)
        .fetch(row -> belief(row.into(COMPONENT_FACT), null, null));
  }

  /**
   * The belief about each part that counts at a viewpoint: the one of that moment, else the first.
   *
   * @return by part; one of which nothing was known is not in it
   */
  Map<Long, Belief> at(DSLContext sql, Collection<Long> components, Viewpoint viewpoint) {
    Map<Long, Belief> found = new HashMap<>();
    for (List<Long> some : Chunks.of(Set.copyOf(components), AT_ONCE)) {
      believed(sql, some, viewpoint.known())
          .forEach((number, line) -> found.put(number, at(line, viewpoint.at())));
    }
    return found;
  }

  private static Belief at(List<Belief> line, Instant at) {
    return line.stream()
        .filter(belief -> !belief.span().from().isAfter(at))
        .reduce((earlier, later) -> later)
        .orElse(line.get(0));
  }

  /** What was believed when the record ended with that entry, by part, oldest first. */
  Map<Long, List<Belief>> believed(
      DSLContext sql, Collection<Long> components, @Nullable Long entry) {
    return entry == null
        ? sql.select(COMPONENT_FACT.asterisk())
            .from(COMPONENT_FACT_NOW)
            .join(COMPONENT_FACT)
            .on(COMPONENT_FACT.ID.eq(COMPONENT_FACT_NOW.FACT_ID))
            .where(COMPONENT_FACT_NOW.COMPONENT_ID.in(components))
            .orderBy(COMPONENT_FACT_NOW.VALID_FROM)
            .fetchGroups(
                COMPONENT_FACT.COMPONENT_ID, row -> belief(row.into(COMPONENT_FACT), null, null))
        : believedThen(sql, components, entry);
  }

  /** The same of those parts of which more than one thing was ever believed in turn. */
  Map<Long, List<Belief>> changing(
      DSLContext sql, Collection<Long> components, @Nullable Long entry) {
    Map<Long, List<Belief>> found = new HashMap<>();
    for (List<Long> some : Chunks.of(Set.copyOf(components), AT_ONCE)) {
      Collection<Long> several = entry == null ? changed(sql, some) : some;
      if (!several.isEmpty()) {
        found.putAll(believed(sql, several, entry));
      }
    }
    return found;
  }

  private static List<Long> changed(DSLContext sql, Collection<Long> components) {
    return sql.selectDistinct(COMPONENT_FACT_NOW.COMPONENT_ID)
        .from(COMPONENT_FACT_NOW)
        .where(COMPONENT_FACT_NOW.COMPONENT_ID.in(components))
        .and(RowByRow.of(COMPONENT_FACT_NOW.PREV_UNTIL).isNotNull())
        .fetch(COMPONENT_FACT_NOW.COMPONENT_ID);
  }

  private static Map<Long, List<Belief>> believedThen(
      DSLContext sql, Collection<Long> components, long entry) {
    Result<? extends Record> rows =
        sql.select(COMPONENT_FACT.asterisk(), COMPONENT_FACT_RETIRED.CHANGE_ID)
            .from(COMPONENT_FACT)
            .leftJoin(COMPONENT_FACT_RETIRED)
            .on(COMPONENT_FACT_RETIRED.FACT_ID.eq(COMPONENT_FACT.ID))
            .where(COMPONENT_FACT.COMPONENT_ID.in(components))
            .orderBy(COMPONENT_FACT.VALID_FROM)
            .fetch();
    return KnownTimeStore.held(
            sql, entry, rows, COMPONENT_FACT.CHANGE_ID, COMPONENT_FACT_RETIRED.CHANGE_ID)
        .stream()
        .collect(
            Collectors.groupingBy(
                row -> row.get(COMPONENT_FACT.COMPONENT_ID),
                Collectors.mapping(
                    row -> belief(row.into(COMPONENT_FACT), null, null), Collectors.toList())));
  }

  /** Every belief ever held, the latest said first. */
  List<Belief> all(DSLContext sql, ComponentId id) {
    return sql.select(COMPONENT_FACT.asterisk(), MADE.asterisk(), ENDED.asterisk())
        .from(COMPONENT_FACT)
        .join(MADE)
        .on(MADE.ID.eq(COMPONENT_FACT.CHANGE_ID))
        .leftJoin(COMPONENT_FACT_RETIRED)
        .on(COMPONENT_FACT_RETIRED.FACT_ID.eq(COMPONENT_FACT.ID))
        .leftJoin(ENDED)
        .on(ENDED.ID.eq(COMPONENT_FACT_RETIRED.CHANGE_ID))
        .where(COMPONENT_FACT.COMPONENT_ID.eq(id.number()))
        .orderBy(COMPONENT_FACT.ID.desc())
        .fetch(row -> belief(row.into(COMPONENT_FACT), note(row, MADE), note(row, ENDED)));
  }

  /** The first belief about a new part. */
  void begin(Tx tx, ComponentId id, ComponentFacts facts, Span span) {
    putIn(tx.sql(), id, insert(tx, id, Belief.fresh(facts, span)));
  }

  /**
   * Gives up beliefs and takes up others. Rows held now are taken out newest first, from the first
   * that changes, and put back oldest first, because each names its predecessor's end.
   */
  void rewrite(Tx tx, ComponentId id, List<Belief> held, FactTimeline change) {
    OffsetDateTime first =
        Tx.moment(
            Stream.concat(change.retired().stream(), change.taken().stream())
                .map(belief -> belief.span().from())
                .min(Comparator.naturalOrder())
                .orElseThrow());
    List<Belief> moved = new ArrayList<>();
    for (int i = held.size() - 1; i >= 0; i--) {
      if (!Tx.moment(held.get(i).span().from()).isBefore(first)) {
        takeOut(tx.sql(), held.get(i));
        moved.add(held.get(i));
      }
    }
    for (Belief belief : change.retired()) {
      moved.removeIf(other -> other.number() == belief.number());
      retire(tx, belief);
    }
    for (Belief belief : change.taken()) {
      moved.add(insert(tx, id, belief));
    }
    moved.stream()
        .sorted(Comparator.comparing(belief -> belief.span().from()))
        .forEach(belief -> putIn(tx.sql(), id, belief));
  }

  /** Somebody else's change of the same part, made meanwhile, shows here. */
  private static void takeOut(DSLContext sql, Belief belief) {
    int gone =
        sql.deleteFrom(COMPONENT_FACT_NOW)
            .where(COMPONENT_FACT_NOW.FACT_ID.eq(belief.number()))
            .execute();
    if (gone != 1) {
      throw new Refused(DbProblem.STALE);
    }
  }

  private static void retire(Tx tx, Belief belief) {
    ComponentFactRetiredRecord row = tx.row(COMPONENT_FACT_RETIRED);
    row.setFactId(belief.number());
    tx.insert(row);
  }

  private static Belief insert(Tx tx, ComponentId id, Belief belief) {
    ComponentFactRecord row = tx.row(COMPONENT_FACT);
    row.setComponentId(id.number());
    row.setValidFrom(Tx.moment(belief.span().from()));
    row.setValidUntil(Tx.moment(belief.span().until()));
    fill(row, belief.facts());
    tx.insert(row);
    return new Belief(row.getId(), belief.facts(), belief.span(), null, null);
  }

  private static void putIn(DSLContext sql, ComponentId id, Belief belief) {
    OffsetDateTime from = Tx.moment(belief.span().from());
    OffsetDateTime before =
        sql.select(COMPONENT_FACT_NOW.VALID_UNTIL)
            .from(COMPONENT_FACT_NOW)
            .where(COMPONENT_FACT_NOW.COMPONENT_ID.eq(id.number()))
            .and(COMPONENT_FACT_NOW.VALID_FROM.lt(from))
            .orderBy(COMPONENT_FACT_NOW.VALID_FROM.desc())
            .limit(1)
            .fetchOne(COMPONENT_FACT_NOW.VALID_UNTIL);
    sql.insertInto(COMPONENT_FACT_NOW)
        .set(COMPONENT_FACT_NOW.FACT_ID, belief.number())
        .set(COMPONENT_FACT_NOW.COMPONENT_ID, id.number())
        .set(COMPONENT_FACT_NOW.VALID_FROM, from)
        .set(COMPONENT_FACT_NOW.VALID_UNTIL, Tx.moment(belief.span().until()))
        .set(COMPONENT_FACT_NOW.PREV_UNTIL, before)
        .execute();
  }

  private static void fill(ComponentFactRecord row, ComponentFacts facts) {
    Reported length = FactRows.reported(facts.length());
    row.setFamilyId(FactRows.number(facts.family()));
    row.setLengthM(FactRows.metres(length));
    row.setLengthTyped(FactRows.typed(length));
    row.setLengthUnit(FactRows.unit(length));
    row.setLengthEvidence(FactRows.evidence(facts.length()));
    row.setPhysicalLengthM(FactRows.metres(facts.physicalLength()));
    row.setPhysicalLengthTyped(FactRows.typed(facts.physicalLength()));
    row.setPhysicalLengthUnit(FactRows.unit(facts.physicalLength()));
    row.setTipMm(facts.tipMillimetres());
    row.setScaleFactor(FactRows.declared(facts.scaleFactor()));
    row.setScaleFactorUnit(FactRows.unit(facts.scaleFactor()));
    row.setCondition(facts.condition().word());
    row.setConditionReason(facts.conditionReason());
    row.setStore(facts.shelf().store());
    row.setBin(facts.shelf().bin());
    row.setSettingsHash(facts.settingsHash());
  }

  private static Belief belief(
      ComponentFactRecord row, @Nullable ChangeNote made, @Nullable ChangeNote ended) {
    ComponentFacts facts =
        new ComponentFacts(
            FactRows.family(row.getFamilyId()),
            FactRows.length(
                row.getLengthM(),
                row.getLengthTyped(),
                row.getLengthUnit(),
                row.getLengthEvidence()),
            FactRows.reported(
                row.getPhysicalLengthM(),
                row.getPhysicalLengthTyped(),
                row.getPhysicalLengthUnit()),
            row.getTipMm(),
            FactRows.scale(row.getScaleFactor(), row.getScaleFactorUnit()),
            Condition.named(row.getCondition()).orElseThrow(),
            row.getConditionReason(),
            new Shelf(row.getStore(), row.getBin()),
            row.getSettingsHash());
    Span span = new Span(row.getValidFrom().toInstant(), row.getValidUntil().toInstant());
    return new Belief(row.getId(), facts, span, made, ended);
  }

  private static @Nullable ChangeNote note(Record row, Change change) {
    Long id = row.get(change.ID);
    return id == null
        ? null
        : new ChangeNote(
            id,
            row.get(change.MADE_AT).toInstant(),
            row.get(change.ACTOR_NAME),
            row.get(change.WHAT),
            row.get(change.REASON));
  }
}
