package loopwright.alloy;

import static loopwright.db.gen.Tables.ALLOY;
import static loopwright.db.gen.Tables.ALLOY_GROUP;
import static loopwright.db.gen.Tables.CHANGE;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.db.DbProblem;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.AlloyGroupRecord;
import loopwright.db.gen.tables.records.AlloyRecord;
import loopwright.matching.Alloys;
import loopwright.problem.Refused;
import loopwright.register.ChangeNote;
import loopwright.units.Numbers;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Groups and the alloys in them. */
final class AlloyStore {

  List<AlloyBook.Group> groups(DSLContext sql) {
    Map<Long, List<String>> alloys =
        sql.selectFrom(ALLOY).orderBy(ALLOY.ID).fetchGroups(ALLOY.GROUP_ID, ALLOY.NAME);
    return sql.selectFrom(ALLOY_GROUP)
        .orderBy(ALLOY_GROUP.NAME_KEY)
        .fetch(row -> group(row, alloys.getOrDefault(row.getId(), List.of())));
  }

  private static AlloyBook.Group group(AlloyGroupRecord row, List<String> alloys) {
    GroupDetails details =
        new GroupDetails(
            row.getName(),
            row.getFerrous(),
            plain(row.getRelativeSlope()),
            row.getSource(),
            alloys);
    return new AlloyBook.Group(row.getId(), details, row.getVersion());
  }

  private static @Nullable BigDecimal plain(@Nullable BigDecimal number) {
    return number == null ? null : new BigDecimal(Numbers.plain(number));
  }

  Optional<ChangeNote> lastChange(DSLContext sql, long id) {
    return sql.select(CHANGE.asterisk())
        .from(ALLOY_GROUP)
        .join(CHANGE)
        .on(CHANGE.ID.eq(ALLOY_GROUP.CHANGE_ID))
        .where(ALLOY_GROUP.ID.eq(id))
        .fetchOptional(
            row ->
                new ChangeNote(
                    row.get(CHANGE.ID),
                    row.get(CHANGE.MADE_AT).toInstant(),
                    row.get(CHANGE.ACTOR_NAME),
                    row.get(CHANGE.WHAT),
                    row.get(CHANGE.REASON)));
  }

  long insert(Tx tx, GroupDetails details) {
    AlloyGroupRecord row = tx.row(ALLOY_GROUP);
    fill(row, details);
    long id = tx.insert(row).getId();
    details.alloys().forEach(alloy -> insert(tx, id, alloy));
    return id;
  }

  /** The group's own row is written whatever changed, so that its version tells of its alloys. */
  void update(Tx tx, long id, int version, GroupDetails details) {
    AlloyGroupRecord row =
        tx.sql()
            .fetchOptional(ALLOY_GROUP, ALLOY_GROUP.ID.eq(id).and(ALLOY_GROUP.VERSION.eq(version)))
            .orElseThrow(() -> new Refused(DbProblem.STALE));
    fill(row, details);
    row.changed(ALLOY_GROUP.NAME, true);
    tx.update(row);
    List<String> missing = new ArrayList<>(details.alloys());
    for (AlloyRecord alloy : tx.sql().fetch(ALLOY, ALLOY.GROUP_ID.eq(id))) {
      if (!missing.remove(alloy.getName())) {
        tx.delete(alloy);
      }
    }
    missing.forEach(alloy -> insert(tx, id, alloy));
  }

  private static void fill(AlloyGroupRecord row, GroupDetails details) {
    row.setName(details.name());
    row.setNameKey(Alloys.key(details.name()));
    row.setFerrous(details.ferrous());
    row.setRelativeSlope(details.relativeSlope());
    row.setSource(details.source());
  }

  private static void insert(Tx tx, long group, String alloy) {
    AlloyRecord row = tx.row(ALLOY);
    row.setGroupId(group);
    row.setName(alloy);
    row.setNameKey(Alloys.key(alloy));
    tx.insert(row);
  }
}
