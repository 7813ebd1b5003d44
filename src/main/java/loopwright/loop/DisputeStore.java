package loopwright.loop;

import static loopwright.db.gen.Tables.MACHINE;
import static loopwright.db.gen.Tables.PLACEMENT_DISPUTE;
import static loopwright.db.gen.Tables.PLACEMENT_DISPUTE_SETTLED;
import static loopwright.db.gen.Tables.POINT;
import static loopwright.db.gen.Tables.SITE;
import static loopwright.db.gen.Tables.TRAIN;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import loopwright.db.Chunks;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.PlacementDisputeRecord;
import loopwright.db.gen.tables.records.PlacementDisputeSettledRecord;
import loopwright.journal.KnownTimeStore;
import loopwright.time.Viewpoint;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.Result;

/** Disputed records: two claims of one part for one moment. Insert-only. */
final class DisputeStore {
  private static final int AT_ONCE = 500;
  private static final Condition OPEN = PLACEMENT_DISPUTE_SETTLED.CHANGE_ID.isNull();

  /** Keeps it, unless the same two claims are in dispute already. */
  void add(Tx tx, Rewriting.Contested contested) {
    Placed standing = contested.standing();
    boolean known =
        openOf(tx.sql(), contested.part().number()).stream()
            .filter(open -> open.part().equals(contested.part()))
            .filter(open -> open.at().equals(contested.at()))
            .anyMatch(
                open ->
                    open.claims(standing.point(), standing.slot())
                        && open.claims(contested.point(), contested.slot()));
    if (known) {
      return;
    }
    PlacementDisputeRecord row = tx.row(PLACEMENT_DISPUTE);
    row.setComponentId(contested.part().number());
    row.setComponentChannel((short) contested.part().channel());
    row.setHappenedAt(Tx.moment(contested.at()));
    row.setPointId(standing.point());
    row.setSlot(standing.slot().word());
    row.setOtherPointId(contested.point());
    row.setOtherSlot(contested.slot().word());
    tx.insert(row);
  }

  void settle(Tx tx, Dispute dispute) {
    PlacementDisputeSettledRecord row = tx.row(PLACEMENT_DISPUTE_SETTLED);
    row.setDisputeId(dispute.number());
    tx.insert(row);
  }

  /** All that nobody has decided yet, the oldest first. */
  List<Dispute> open(DSLContext sql, int most) {
    return told(sql, select(sql, OPEN).stream().limit(most).toList());
  }

  /** Those about that part. */
  List<Dispute> openOf(DSLContext sql, long component) {
    return told(sql, select(sql, PLACEMENT_DISPUTE.COMPONENT_ID.eq(component).and(OPEN)));
  }

  /** Those in which one of the points has a claim. */
  List<Dispute> openAt(DSLContext sql, Collection<Long> points) {
    List<Dispute> found = new ArrayList<>();
    for (List<Long> some : Chunks.of(new TreeSet<>(points), AT_ONCE)) {
      found.addAll(told(sql, select(sql, at(some).and(OPEN))));
    }
    return found;
  }

  /** The same of those about moments up to the viewpoint's, open as it was known then. */
  List<Dispute> openAt(DSLContext sql, Collection<Long> points, Viewpoint viewpoint) {
    Long entry = viewpoint.known();
    List<Dispute> found = entry == null ? openAt(sql, points) : openThen(sql, points, entry);
    return found.stream().filter(dispute -> !dispute.at().isAfter(viewpoint.at())).toList();
  }

  private static List<Dispute> openThen(DSLContext sql, Collection<Long> points, long entry) {
    Map<Long, Record> found = new HashMap<>();
    for (List<Long> some : Chunks.of(new TreeSet<>(points), AT_ONCE)) {
      KnownTimeStore.held(
              sql,
              entry,
              select(sql, at(some)),
              PLACEMENT_DISPUTE.CHANGE_ID,
              PLACEMENT_DISPUTE_SETTLED.CHANGE_ID)
          .forEach(row -> found.put(row.get(PLACEMENT_DISPUTE.ID), row));
    }
    return told(sql, found.values());
  }

  private static Condition at(Collection<Long> points) {
    return PLACEMENT_DISPUTE.POINT_ID.in(points).or(PLACEMENT_DISPUTE.OTHER_POINT_ID.in(points));
  }

  private static Result<? extends Record> select(DSLContext sql, Condition which) {
    return sql.select(PLACEMENT_DISPUTE.asterisk(), PLACEMENT_DISPUTE_SETTLED.CHANGE_ID)
        .from(PLACEMENT_DISPUTE)
        .leftJoin(PLACEMENT_DISPUTE_SETTLED)
        .on(PLACEMENT_DISPUTE_SETTLED.DISPUTE_ID.eq(PLACEMENT_DISPUTE.ID))
        .where(which)
        .orderBy(PLACEMENT_DISPUTE.ID)
        .fetch();
  }

  private static List<Dispute> told(DSLContext sql, Collection<? extends Record> rows) {
    if (rows.isEmpty()) {
      return List.of();
    }
    Set<Long> points = new TreeSet<>();
    rows.forEach(row -> points.add(row.get(PLACEMENT_DISPUTE.POINT_ID)));
    rows.forEach(row -> points.add(row.get(PLACEMENT_DISPUTE.OTHER_POINT_ID)));
    Map<Long, Record> named = named(sql, points);
    return rows.stream().map(row -> dispute(row, named)).toList();
  }

  private static Map<Long, Record> named(DSLContext sql, Collection<Long> points) {
    return new HashMap<>(
        sql.select(POINT.ID, POINT.TAG, SITE.ZONE)
            .from(POINT)
            .join(MACHINE)
            .on(MACHINE.ID.eq(POINT.MACHINE_ID))
            .join(TRAIN)
            .on(TRAIN.ID.eq(MACHINE.TRAIN_ID))
            .join(SITE)
            .on(SITE.ID.eq(TRAIN.SITE_ID))
            .where(POINT.ID.in(points))
            .fetchMap(POINT.ID, row -> (Record) row));
  }

  private static Dispute dispute(Record row, Map<Long, Record> named) {
    return new Dispute(
        row.get(PLACEMENT_DISPUTE.ID),
        new Content.Part(
            row.get(PLACEMENT_DISPUTE.COMPONENT_ID), row.get(PLACEMENT_DISPUTE.COMPONENT_CHANNEL)),
        row.get(PLACEMENT_DISPUTE.HAPPENED_AT).toInstant(),
        claim(named, row.get(PLACEMENT_DISPUTE.POINT_ID), row.get(PLACEMENT_DISPUTE.SLOT)),
        claim(
            named,
            row.get(PLACEMENT_DISPUTE.OTHER_POINT_ID),
            row.get(PLACEMENT_DISPUTE.OTHER_SLOT)));
  }

  private static Dispute.Claim claim(Map<Long, Record> named, long point, String slot) {
    Record row = named.get(point);
    if (row == null) {
      throw new IllegalStateException("no point " + point);
    }
    return new Dispute.Claim(
        point, row.get(POINT.TAG), Slot.ofWord(slot), ZoneId.of(row.get(SITE.ZONE)));
  }
}
