package loopwright.kit;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.COMPONENT;
import static loopwright.db.gen.Tables.KIT;
import static loopwright.db.gen.Tables.KIT_DISSOLVED;
import static loopwright.db.gen.Tables.KIT_HELD;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import loopwright.db.Chunks;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.KitDissolvedRecord;
import loopwright.db.gen.tables.records.KitHeldRecord;
import loopwright.db.gen.tables.records.KitRecord;
import loopwright.loop.PartSet;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.impl.DSL;

/** Kits, their parts while they stand, and why they ended. */
final class KitStore {
  private static final int AT_ONCE = 1_000;

  /** Makes it; the database refuses a part that another kit holds. */
  long add(Tx tx, String name, PartSet set, String note) {
    KitRecord row = tx.row(KIT);
    row.setName(name);
    row.setFingerprint(set.fingerprint());
    row.setNote(note);
    long kit = tx.insert(row).getId();
    for (long component : set.components()) {
      KitHeldRecord held = tx.row(KIT_HELD);
      held.setComponentId(component);
      held.setKitId(kit);
      tx.insert(held);
    }
    return kit;
  }

  void dissolve(Tx tx, Kit kit, String reason) {
    KitDissolvedRecord row = tx.row(KIT_DISSOLVED);
    row.setKitId(kit.id());
    row.setReason(reason);
    tx.insert(row);
    for (KitHeldRecord held :
        tx.sql().fetch(KIT_HELD, KIT_HELD.KIT_ID.eq(kit.id())).sortAsc(KIT_HELD.COMPONENT_ID)) {
      tx.delete(held);
    }
  }

  /** Until this transaction ends, nobody else makes or dissolves a kit with these parts. */
  void hold(Tx tx, PartSet set) {
    for (long component : set.components().stream().sorted().toList()) {
      tx.sql()
          .select(COMPONENT.ID)
          .from(COMPONENT)
          .where(COMPONENT.ID.eq(component))
          .forUpdate()
          .fetch();
    }
  }

  Optional<Kit> one(DSLContext sql, long id) {
    return fetch(sql, KIT.ID.eq(id), 1).stream().findFirst();
  }

  Optional<Kit> named(DSLContext sql, String name) {
    Condition stands = KIT_DISSOLVED.ID.isNull();
    return fetch(sql, DSL.lower(KIT.NAME).eq(DSL.lower(DSL.val(name))).and(stands), 1).stream()
        .findFirst();
  }

  /** Those that stand, or all, the newest first. */
  List<Kit> newest(DSLContext sql, boolean all, int most) {
    return fetch(sql, all ? DSL.noCondition() : KIT_DISSOLVED.ID.isNull(), most);
  }

  /** The kits that hold these parts now, by part. */
  Map<Long, Kit> holding(DSLContext sql, Collection<Long> components) {
    Map<Long, Kit> found = new TreeMap<>();
    for (List<Long> some : Chunks.of(components, AT_ONCE)) {
      Map<Long, Long> kits =
          sql.select(KIT_HELD.COMPONENT_ID, KIT_HELD.KIT_ID)
              .from(KIT_HELD)
              .where(KIT_HELD.COMPONENT_ID.in(some))
              .fetchMap(KIT_HELD.COMPONENT_ID, KIT_HELD.KIT_ID);
      List<Kit> all = new ArrayList<>();
      if (!kits.isEmpty()) {
        all.addAll(fetch(sql, KIT.ID.in(kits.values()), AT_ONCE));
      }
      kits.forEach(
          (component, kit) ->
              all.stream()
                  .filter(each -> each.id() == kit)
                  .forEach(each -> found.put(component, each)));
    }
    return found;
  }

  /** Whether any kit stands at all: judging asks for every loop. */
  boolean isAny(DSLContext sql) {
    return sql.fetchExists(KIT_HELD);
  }

  private static List<Kit> fetch(DSLContext sql, Condition which, int most) {
    return sql.select(KIT.asterisk(), KIT_DISSOLVED.REASON, CHANGE.ACTOR_NAME, CHANGE.MADE_AT)
        .from(KIT)
        .join(CHANGE)
        .on(CHANGE.ID.eq(KIT.CHANGE_ID))
        .leftJoin(KIT_DISSOLVED)
        .on(KIT_DISSOLVED.KIT_ID.eq(KIT.ID))
        .where(which)
        .orderBy(KIT.ID.desc())
        .limit(most)
        .fetch(KitStore::kit);
  }

  private static Kit kit(Record row) {
    return new Kit(
        row.get(KIT.ID),
        row.get(KIT.NAME),
        PartSet.read(row.get(KIT.FINGERPRINT)).orElseThrow(),
        row.get(KIT.NOTE),
        row.get(CHANGE.ACTOR_NAME),
        row.get(CHANGE.MADE_AT).toInstant(),
        row.get(KIT_DISSOLVED.REASON));
  }
}
