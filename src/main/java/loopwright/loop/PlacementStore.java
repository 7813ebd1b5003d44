package loopwright.loop;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.COMPONENT;
import static loopwright.db.gen.Tables.OCCUPANCY;
import static loopwright.db.gen.Tables.PLACEMENT;
import static loopwright.db.gen.Tables.PLACEMENT_RETIRED;
import static loopwright.db.gen.Tables.POINT;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import loopwright.db.Chunks;
import loopwright.db.RowByRow;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.PlacementRecord;
import loopwright.db.gen.tables.records.PlacementRetiredRecord;
import loopwright.time.Span;
import loopwright.time.Viewpoint;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/**
 * Beliefs about placements. {@code placement} keeps every belief ever held; {@code occupancy} holds
 * those held now, chained so that the database refuses overlaps of a slot and of a part.
 */
final class PlacementStore {
  private final PastPlacementStore past = new PastPlacementStore();

  /** What is believed to sit at the point at that moment, in chain order. */
  List<Placed> at(DSLContext sql, long point, Instant moment) {
    return fetch(sql, OCCUPANCY.POINT_ID.eq(point).and(covers(moment)));
  }

  /** The same for several points at once. */
  List<Placed> at(DSLContext sql, Collection<Long> points, Instant moment) {
    OffsetDateTime at = Tx.moment(moment);
    Condition covers = OCCUPANCY.VALID_FROM.le(at).and(RowByRow.of(OCCUPANCY.VALID_UNTIL).gt(at));
    return fetch(sql, OCCUPANCY.POINT_ID.in(points).and(covers));
  }

  /** The same as it was known when the record ended with an earlier entry. */
  List<Placed> at(DSLContext sql, Collection<Long> points, Viewpoint viewpoint) {
    return viewpoint.asKnownNow()
        ? at(sql, points, viewpoint.at())
        : past.at(sql, points, viewpoint);
  }

  /** Everything believed now about the point, past and future. */
  List<Placed> ofPoint(DSLContext sql, long point) {
    return fetch(sql, OCCUPANCY.POINT_ID.eq(point));
  }

  /** Everything believed now about where the component was, oldest first. */
  List<Placed> ofComponent(DSLContext sql, long component) {
    return fetch(sql, OCCUPANCY.OCCUPANT.eq(component)).stream()
        .sorted(Comparator.comparing(placed -> placed.span().from()))
        .toList();
  }

  /** Everything believed now about these points or these components, each belief once. */
  List<Placed> ofAll(DSLContext sql, Collection<Long> points, Collection<Long> components) {
    Map<Long, Placed> found = new LinkedHashMap<>();
    for (List<Long> some : Chunks.of(new TreeSet<>(points), ImportedPlacements.AT_ONCE)) {
      fetch(sql, OCCUPANCY.POINT_ID.in(some)).forEach(p -> found.put(p.placement(), p));
    }
    for (List<Long> some : Chunks.of(new TreeSet<>(components), ImportedPlacements.AT_ONCE)) {
      fetch(sql, OCCUPANCY.OCCUPANT.in(some)).forEach(p -> found.put(p.placement(), p));
    }
    return List.copyOf(found.values());
  }

  /** Where the component's channel is believed to be at that moment. */
  Optional<Placed> of(DSLContext sql, Content.Part part, Instant moment) {
    return fetch(
            sql,
            OCCUPANCY
                .OCCUPANT
                .eq(part.number())
                .and(OCCUPANCY.OCCUPANT_CHANNEL.eq((short) part.channel()))
                .and(covers(moment)))
        .stream()
        .findFirst();
  }

  /** When the next belief about the slot begins after that moment; open if none does. */
  Instant nextInSlot(DSLContext sql, long point, Slot slot, Instant moment) {
    return next(sql, OCCUPANCY.POINT_ID.eq(point).and(OCCUPANCY.SLOT.eq(slot.word())), moment);
  }

  /** When the part is next believed to sit somewhere after that moment; open if nowhere. */
  Instant nextOfPart(DSLContext sql, Content.Part part, Instant moment) {
    return next(
        sql,
        OCCUPANCY
            .OCCUPANT
            .eq(part.number())
            .and(OCCUPANCY.OCCUPANT_CHANNEL.eq((short) part.channel())),
        moment);
  }

  /**
   * Makes other changes of the point, of these components and of what sits at the point wait until
   * this one is through, so that each is judged by what the one before it left.
   */
  void holdStill(DSLContext sql, long point, Collection<Long> components) {
    sql.select(POINT.ID).from(POINT).where(POINT.ID.eq(point)).forUpdate().fetch();
    Set<Long> all = new TreeSet<>(components);
    all.addAll(
        sql.selectDistinct(OCCUPANCY.COMPONENT_ID)
            .from(OCCUPANCY)
            .where(OCCUPANCY.POINT_ID.eq(point))
            .and(OCCUPANCY.COMPONENT_ID.isNotNull())
            .fetch(OCCUPANCY.COMPONENT_ID));
    for (Long component : all) {
      sql.select(COMPONENT.ID)
          .from(COMPONENT)
          .where(COMPONENT.ID.eq(component))
          .forUpdate()
          .fetch();
    }
  }

  /** Who recorded a belief, as they were called then. */
  String recordedBy(DSLContext sql, long placement) {
    return sql.select(CHANGE.ACTOR_NAME)
        .from(PLACEMENT)
        .join(CHANGE)
        .on(CHANGE.ID.eq(PLACEMENT.CHANGE_ID))
        .where(PLACEMENT.ID.eq(placement))
        .fetchSingle(CHANGE.ACTOR_NAME);
  }

  /** The tag of a point. */
  String tag(DSLContext sql, long point) {
    return sql.select(POINT.TAG).from(POINT).where(POINT.ID.eq(point)).fetchSingle(POINT.TAG);
  }

  private static Instant next(DSLContext sql, Condition timeline, Instant moment) {
    OffsetDateTime next =
        sql.select(DSL.min(OCCUPANCY.VALID_FROM))
            .from(OCCUPANCY)
            .where(timeline)
            .and(OCCUPANCY.VALID_FROM.gt(Tx.moment(moment)))
            .fetchSingle()
            .value1();
    return next == null ? Span.OPEN : next.toInstant();
  }

  private static Condition covers(Instant moment) {
    OffsetDateTime at = Tx.moment(moment);
    return OCCUPANCY.VALID_FROM.le(at).and(OCCUPANCY.VALID_UNTIL.gt(at));
  }

  private static List<Placed> fetch(DSLContext sql, Condition which) {
    return sql
        .select(OCCUPANCY.asterisk(), PLACEMENT.SOURCE)
        .from(OCCUPANCY)
        .join(PLACEMENT)
        .on(PLACEMENT.ID.eq(OCCUPANCY.PLACEMENT_ID))
        .where(which)
        .fetch(PlacementStore::placed)
        .stream()
        .sorted(Placed.IN_CHAIN_ORDER)
        .toList();
  }

  private static Placed placed(Record row) {
    return new Placed(
        row.get(OCCUPANCY.PLACEMENT_ID),
        row.get(OCCUPANCY.POINT_ID),
        Slot.ofWord(row.get(OCCUPANCY.SLOT)),
        content(
            row.get(OCCUPANCY.CONTENT),
            row.get(OCCUPANCY.COMPONENT_ID),
            row.get(OCCUPANCY.OCCUPANT_CHANNEL)),
        new Span(
            row.get(OCCUPANCY.VALID_FROM).toInstant(), row.get(OCCUPANCY.VALID_UNTIL).toInstant()),
        row.get(PLACEMENT.SOURCE));
  }

  static Content content(String word, @Nullable Long component, short channel) {
    if (component != null) {
      return new Content.Part(component, channel);
    }
    return word.equals("none") ? new Content.None() : new Content.Unknown();
  }

  /**
   * Gives up some beliefs and takes up others, in one go. Rows of {@code occupancy} that follow in
   * either timeline are taken out newest first and put back oldest first, because each names its
   * predecessor's end.
   *
   * @param retire beliefs held now
   * @param take new beliefs; must not overlap what stays, or the database refuses
   */
  void rewrite(Tx tx, Collection<Placed> retire, Collection<Placed> take) {
    Map<Long, Placed> moved = following(tx.sql(), retire, take);
    moved.values().stream()
        .sorted(Comparator.comparing((Placed placed) -> placed.span().from()).reversed())
        .forEach(placed -> takeOut(tx.sql(), placed));
    for (Placed placed : retire) {
      moved.remove(placed.placement());
      PlacementRetiredRecord retired = tx.row(PLACEMENT_RETIRED);
      retired.setPlacementId(placed.placement());
      tx.insert(retired);
    }
    List<Placed> back = new ArrayList<>(moved.values());
    for (Placed placed : take) {
      back.add(insertBelief(tx, placed));
    }
    back.stream()
        .sorted(Comparator.comparing((Placed placed) -> placed.span().from()))
        .forEach(placed -> putIn(tx.sql(), placed));
  }

  /** The retired rows and all rows that name, directly or through others, an end that will move. */
  private static Map<Long, Placed> following(
      DSLContext sql, Collection<Placed> retire, Collection<Placed> take) {
    Map<Long, Placed> found = new LinkedHashMap<>();
    Deque<Placed> open = new ArrayDeque<>(retire);
    for (Placed placed : take) {
      open.addAll(successors(sql, placed));
    }
    while (!open.isEmpty()) {
      Placed placed = open.remove();
      if (found.put(placed.placement(), placed) == null) {
        open.addAll(successors(sql, placed));
      }
    }
    return found;
  }

  /** The next rows in the slot's and in the part's timeline. */
  private static List<Placed> successors(DSLContext sql, Placed placed) {
    OffsetDateTime from = Tx.moment(placed.span().from());
    List<Placed> next = new ArrayList<>();
    firstAfter(
            sql,
            OCCUPANCY
                .POINT_ID
                .eq(placed.point())
                .and(OCCUPANCY.SLOT.eq(placed.slot().word()))
                .and(OCCUPANCY.VALID_FROM.gt(from)))
        .ifPresent(next::add);
    if (placed.content() instanceof Content.Part part) {
      firstAfter(
              sql,
              OCCUPANCY
                  .OCCUPANT
                  .eq(part.number())
                  .and(OCCUPANCY.OCCUPANT_CHANNEL.eq((short) part.channel()))
                  .and(OCCUPANCY.VALID_FROM.gt(from)))
          .ifPresent(next::add);
    }
    return next;
  }

  private static Optional<Placed> firstAfter(DSLContext sql, Condition later) {
    return sql.select(OCCUPANCY.asterisk(), PLACEMENT.SOURCE)
        .from(OCCUPANCY)
        .join(PLACEMENT)
        .on(PLACEMENT.ID.eq(OCCUPANCY.PLACEMENT_ID))
        .where(later)
        .orderBy(OCCUPANCY.VALID_FROM)
        .limit(1)
        .fetchOptional(PlacementStore::placed);
  }

  private static void takeOut(DSLContext sql, Placed placed) {
    sql.deleteFrom(OCCUPANCY).where(OCCUPANCY.PLACEMENT_ID.eq(placed.placement())).execute();
  }

  private static Placed insertBelief(Tx tx, Placed placed) {
    PlacementRecord row = tx.row(PLACEMENT);
    row.setPointId(placed.point());
    row.setSlot(placed.slot().word());
    row.setContent(placed.content().word());
    placed.content().component().ifPresent(row::setComponentId);
    row.setComponentChannel((short) placed.content().channel());
    row.setValidFrom(Tx.moment(placed.span().from()));
    row.setValidUntil(Tx.moment(placed.span().until()));
    row.setSource(placed.source());
    tx.insert(row);
    return new Placed(
        row.getId(),
        placed.point(),
        placed.slot(),
        placed.content(),
        placed.span(),
        placed.source());
  }

  private static void putIn(DSLContext sql, Placed placed) {
    OffsetDateTime from = Tx.moment(placed.span().from());
    short channel = (short) placed.content().channel();
    Condition ofPart =
        OCCUPANCY.OCCUPANT.eq(placed.occupant()).and(OCCUPANCY.OCCUPANT_CHANNEL.eq(channel));
    Condition ofSlot =
        OCCUPANCY.POINT_ID.eq(placed.point()).and(OCCUPANCY.SLOT.eq(placed.slot().word()));
    sql.insertInto(OCCUPANCY)
        .set(OCCUPANCY.PLACEMENT_ID, placed.placement())
        .set(OCCUPANCY.POINT_ID, placed.point())
        .set(OCCUPANCY.SLOT, placed.slot().word())
        .set(OCCUPANCY.CONTENT, placed.content().word())
        .set(OCCUPANCY.OCCUPANT, placed.occupant())
        .set(OCCUPANCY.OCCUPANT_CHANNEL, channel)
        .set(OCCUPANCY.COMPONENT_ID, component(placed))
        .set(OCCUPANCY.VALID_FROM, from)
        .set(OCCUPANCY.VALID_UNTIL, Tx.moment(placed.span().until()))
        .set(OCCUPANCY.OCCUPANT_PREV_UNTIL, lastEnd(sql, ofPart, from))
        .set(OCCUPANCY.SLOT_PREV_UNTIL, lastEnd(sql, ofSlot, from))
        .execute();
  }

  private static @Nullable Long component(Placed placed) {
    return placed.content() instanceof Content.Part part ? part.number() : null;
  }

  /** The end of the row before that moment in a timeline, even when it wrongly reaches past it. */
  private static @Nullable OffsetDateTime lastEnd(
      DSLContext sql, Condition timeline, OffsetDateTime from) {
    return sql.select(DSL.max(OCCUPANCY.VALID_UNTIL))
        .from(OCCUPANCY)
        .where(timeline)
        .and(OCCUPANCY.VALID_FROM.lt(from))
        .fetchSingle()
        .value1();
  }
}
