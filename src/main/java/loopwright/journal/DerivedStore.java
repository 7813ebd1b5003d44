package loopwright.journal;

import static loopwright.db.gen.Tables.ATTACHMENT;
import static loopwright.db.gen.Tables.ATTACHMENT_PIECE;
import static loopwright.db.gen.Tables.COMPONENT;
import static loopwright.db.gen.Tables.COMPONENT_FACT;
import static loopwright.db.gen.Tables.COMPONENT_FACT_NOW;
import static loopwright.db.gen.Tables.COMPONENT_FACT_RETIRED;
import static loopwright.db.gen.Tables.OCCUPANCY;
import static loopwright.db.gen.Tables.PLACEMENT;
import static loopwright.db.gen.Tables.PLACEMENT_RETIRED;

import java.security.MessageDigest;
import java.time.OffsetDateTime;
import java.util.HexFormat;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Stream;
import loopwright.db.gen.tables.ComponentFactNow;
import loopwright.db.gen.tables.Occupancy;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.impl.DSL;

/**
 * Compares the tables that are kept for speed or for their constraints with what they are worked
 * out from. Each question is one statement that answers with the first row that is wrong.
 */
final class DerivedStore {
  private static final OffsetDateTime OPEN = OffsetDateTime.parse("9999-12-31T00:00:00Z");

  Optional<Disagreement> firstDisagreement(DSLContext sql) {
    Stream<Function<DSLContext, Optional<Disagreement>>> questions =
        Stream.of(
            DerivedStore::placementNotBelieved,
            DerivedStore::occupancyNotBelieved,
            DerivedStore::occupancyChain,
            DerivedStore::factNotBelieved,
            DerivedStore::factNowNotBelieved,
            DerivedStore::factChain,
            DerivedStore::componentState,
            DerivedStore::attachedContent);
    return questions.flatMap(question -> question.apply(sql).stream()).findFirst();
  }

  private static Optional<Disagreement> placementNotBelieved(DSLContext sql) {
    Field<Long> occupant =
        DSL.when(PLACEMENT.CONTENT.eq("part"), PLACEMENT.COMPONENT_ID)
            .otherwise(PLACEMENT.ID.neg());
    Condition same =
        OCCUPANCY
            .POINT_ID
            .eq(PLACEMENT.POINT_ID)
            .and(OCCUPANCY.SLOT.eq(PLACEMENT.SLOT))
            .and(OCCUPANCY.CONTENT.eq(PLACEMENT.CONTENT))
            .and(OCCUPANCY.COMPONENT_ID.isNotDistinctFrom(PLACEMENT.COMPONENT_ID))
            .and(OCCUPANCY.OCCUPANT.eq(occupant))
            .and(OCCUPANCY.OCCUPANT_CHANNEL.eq(PLACEMENT.COMPONENT_CHANNEL))
            .and(OCCUPANCY.VALID_FROM.eq(PLACEMENT.VALID_FROM))
            .and(OCCUPANCY.VALID_UNTIL.eq(PLACEMENT.VALID_UNTIL));
    return first(
        () ->
            sql.select(PLACEMENT.ID)
                .from(PLACEMENT)
                .leftJoin(PLACEMENT_RETIRED)
                .on(PLACEMENT_RETIRED.PLACEMENT_ID.eq(PLACEMENT.ID))
                .leftJoin(OCCUPANCY)
                .on(OCCUPANCY.PLACEMENT_ID.eq(PLACEMENT.ID))
                .where(PLACEMENT_RETIRED.PLACEMENT_ID.isNull())
                .and(OCCUPANCY.PLACEMENT_ID.isNull().or(same.not()))
                .orderBy(PLACEMENT.ID)
                .limit(1)
                .fetchOne(PLACEMENT.ID),
        "occupancy",
        "it does not say what the placement of this number says, which is believed.");
  }

  private static Optional<Disagreement> occupancyNotBelieved(DSLContext sql) {
    return first(
        () ->
            sql.select(OCCUPANCY.PLACEMENT_ID)
                .from(OCCUPANCY)
                .join(PLACEMENT_RETIRED)
                .on(PLACEMENT_RETIRED.PLACEMENT_ID.eq(OCCUPANCY.PLACEMENT_ID))
                .orderBy(OCCUPANCY.PLACEMENT_ID)
                .limit(1)
                .fetchOne(OCCUPANCY.PLACEMENT_ID),
        "occupancy",
        "the placement of this number is no longer believed.");
  }

  private static Optional<Disagreement> occupancyChain(DSLContext sql) {
    Occupancy before = OCCUPANCY.as("earlier");
    Condition earlier = before.VALID_FROM.lt(OCCUPANCY.VALID_FROM);
    Field<OffsetDateTime> ofSlot =
        lastEnd(
            sql,
            before,
            earlier.and(before.POINT_ID.eq(OCCUPANCY.POINT_ID)).and(before.SLOT.eq(OCCUPANCY.SLOT)),
            before.VALID_UNTIL);
    Field<OffsetDateTime> ofOccupant =
        lastEnd(
            sql,
            before,
            earlier
                .and(before.OCCUPANT.eq(OCCUPANCY.OCCUPANT))
                .and(before.OCCUPANT_CHANNEL.eq(OCCUPANCY.OCCUPANT_CHANNEL)),
            before.VALID_UNTIL);
    return first(
        () ->
            sql.select(OCCUPANCY.PLACEMENT_ID)
                .from(OCCUPANCY)
                .where(OCCUPANCY.SLOT_PREV_UNTIL.isDistinctFrom(ofSlot))
                .or(OCCUPANCY.OCCUPANT_PREV_UNTIL.isDistinctFrom(ofOccupant))
                .orderBy(OCCUPANCY.PLACEMENT_ID)
                .limit(1)
                .fetchOne(OCCUPANCY.PLACEMENT_ID),
        "occupancy",
        "the end of the placement before it is not the one it names.");
  }

  private static Field<OffsetDateTime> lastEnd(
      DSLContext sql, org.jooq.Table<?> earlier, Condition which, Field<OffsetDateTime> end) {
    return DSL.field(sql.select(DSL.max(end)).from(earlier).where(which));
  }

  private static Optional<Disagreement> factNotBelieved(DSLContext sql) {
    Condition same =
        COMPONENT_FACT_NOW
            .COMPONENT_ID
            .eq(COMPONENT_FACT.COMPONENT_ID)
            .and(COMPONENT_FACT_NOW.VALID_FROM.eq(COMPONENT_FACT.VALID_FROM))
            .and(COMPONENT_FACT_NOW.VALID_UNTIL.eq(COMPONENT_FACT.VALID_UNTIL));
    return first(
        () ->
            sql.select(COMPONENT_FACT.ID)
                .from(COMPONENT_FACT)
                .leftJoin(COMPONENT_FACT_RETIRED)
                .on(COMPONENT_FACT_RETIRED.FACT_ID.eq(COMPONENT_FACT.ID))
                .leftJoin(COMPONENT_FACT_NOW)
                .on(COMPONENT_FACT_NOW.FACT_ID.eq(COMPONENT_FACT.ID))
                .where(COMPONENT_FACT_RETIRED.FACT_ID.isNull())
                .and(COMPONENT_FACT_NOW.FACT_ID.isNull().or(same.not()))
                .orderBy(COMPONENT_FACT.ID)
                .limit(1)
                .fetchOne(COMPONENT_FACT.ID),
        "component_fact_now",
        "it does not say what the component fact of this number says, which is believed.");
  }

  private static Optional<Disagreement> factNowNotBelieved(DSLContext sql) {
    return first(
        () ->
            sql.select(COMPONENT_FACT_NOW.FACT_ID)
                .from(COMPONENT_FACT_NOW)
                .join(COMPONENT_FACT_RETIRED)
                .on(COMPONENT_FACT_RETIRED.FACT_ID.eq(COMPONENT_FACT_NOW.FACT_ID))
                .orderBy(COMPONENT_FACT_NOW.FACT_ID)
                .limit(1)
                .fetchOne(COMPONENT_FACT_NOW.FACT_ID),
        "component_fact_now",
        "the component fact of this number is no longer believed.");
  }

  private static Optional<Disagreement> factChain(DSLContext sql) {
    ComponentFactNow before = COMPONENT_FACT_NOW.as("earlier");
    Field<OffsetDateTime> end =
        lastEnd(
            sql,
            before,
            before
                .VALID_FROM
                .lt(COMPONENT_FACT_NOW.VALID_FROM)
                .and(before.COMPONENT_ID.eq(COMPONENT_FACT_NOW.COMPONENT_ID)),
            before.VALID_UNTIL);
    return first(
        () ->
            sql.select(COMPONENT_FACT_NOW.FACT_ID)
                .from(COMPONENT_FACT_NOW)
                .where(COMPONENT_FACT_NOW.PREV_UNTIL.isDistinctFrom(end))
                .orderBy(COMPONENT_FACT_NOW.FACT_ID)
                .limit(1)
                .fetchOne(COMPONENT_FACT_NOW.FACT_ID),
        "component_fact_now",
        "the end of the fact before it is not the one it names.");
  }

  /** A part that is fitted until further notice is not in stock; one never fitted is not fitted. */
  private static Optional<Disagreement> componentState(DSLContext sql) {
    Condition placed =
        DSL.exists(sql.selectOne().from(OCCUPANCY).where(OCCUPANCY.OCCUPANT.eq(COMPONENT.ID)));
    Condition placedOpen =
        DSL.exists(
            sql.selectOne()
                .from(OCCUPANCY)
                .where(OCCUPANCY.OCCUPANT.eq(COMPONENT.ID))
                .and(OCCUPANCY.VALID_UNTIL.eq(OPEN)));
    Condition usable = COMPONENT.CONDITION.eq("usable");
    Condition wrong =
        usable
            .not()
            .and(COMPONENT.STATE.ne(COMPONENT.CONDITION))
            .or(usable.and(COMPONENT.STATE.in("quarantined", "scrapped")))
            .or(usable.and(COMPONENT.STATE.eq("in stock")).and(placedOpen))
            .or(usable.and(COMPONENT.STATE.eq("fitted")).andNot(placed));
    return first(
        () ->
            sql.select(COMPONENT.ID)
                .from(COMPONENT)
                .where(wrong)
                .orderBy(COMPONENT.ID)
                .limit(1)
                .fetchOne(COMPONENT.ID),
        "component",
        "its state does not follow from its condition and from where it is placed.");
  }

  @SuppressWarnings("NullAway") // jOOQ answers null where no row is wrong
  private static Optional<Disagreement> first(Supplier<Long> wrong, String table, String sentence) {
    return Optional.ofNullable(wrong.get()).map(key -> Disagreement.ofRow(table, key, sentence));
  }

  /** Contents of files are known to the journal by their hash only. */
  private static Optional<Disagreement> attachedContent(DSLContext sql) {
    return sql
        .select(DSL.min(ATTACHMENT.ID), ATTACHMENT.SHA256)
        .from(ATTACHMENT)
        .groupBy(ATTACHMENT.SHA256)
        .orderBy(DSL.min(ATTACHMENT.ID))
        .fetch()
        .stream()
        .filter(row -> !row.value2().equals(hashOfPieces(sql, row.value2())))
        .map(
            row ->
                Disagreement.ofRow(
                    "attachment",
                    row.value1(),
                    "Its content does not have the hash that the record says."))
        .findFirst();
  }

  private static String hashOfPieces(DSLContext sql, String sha256) {
    MessageDigest digest = Hashes.sha256();
    sql.select(ATTACHMENT_PIECE.CONTENT)
        .from(ATTACHMENT_PIECE)
        .where(ATTACHMENT_PIECE.SHA256.eq(sha256))
        .orderBy(ATTACHMENT_PIECE.PIECE_NO)
        .fetch(ATTACHMENT_PIECE.CONTENT)
        .forEach(digest::update);
    return HexFormat.of().formatHex(digest.digest());
  }
}
