package loopwright.outage;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.EMERGENT_WORK;
import static loopwright.db.gen.Tables.OUTAGE_SCOPE;
import static loopwright.db.gen.Tables.POINT;
import static loopwright.db.gen.Tables.WORK_TEMPLATE;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.EmergentWorkRecord;
import loopwright.db.gen.tables.records.OutageScopeRecord;
import loopwright.db.gen.tables.records.WorkTemplateRecord;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.impl.DSL;

/** Which loops an outage takes, and the shop's own steps. Insert-only. */
final class ScopeStore {

  void put(Tx tx, long outage, long point, boolean taken, Set<Work> works, String reason) {
    OutageScopeRecord row = tx.row(OUTAGE_SCOPE);
    row.setOutageId(outage);
    row.setPointId(point);
    row.setTaken(taken);
    row.setWorks(taken ? Work.write(works) : "");
    row.setReason(reason);
    tx.insert(row);
  }

  void addEmergent(Tx tx, long outage, Emergent.Said said) {
    EmergentWorkRecord row = tx.row(EMERGENT_WORK);
    row.setOutageId(outage);
    row.setPointId(said.point());
    row.setWorks(Work.write(said.works()));
    row.setFoundBy(said.foundBy());
    row.setFoundAt(Tx.moment(said.foundAt()));
    row.setReason(said.reason());
    tx.insert(row);
  }

  /** Oldest first. */
  List<Emergent> emergent(DSLContext sql, long outage) {
    return sql.select(EMERGENT_WORK.asterisk())
        .select(POINT.TAG, CHANGE.ACTOR_NAME)
        .from(EMERGENT_WORK)
        .join(POINT)
        .on(POINT.ID.eq(EMERGENT_WORK.POINT_ID))
        .join(CHANGE)
        .on(CHANGE.ID.eq(EMERGENT_WORK.CHANGE_ID))
        .where(EMERGENT_WORK.OUTAGE_ID.eq(outage))
        .orderBy(EMERGENT_WORK.ID)
        .fetch(
            row ->
                new Emergent(
                    row.get(EMERGENT_WORK.POINT_ID),
                    row.get(POINT.TAG),
                    List.copyOf(Work.read(row.get(EMERGENT_WORK.WORKS))),
                    row.get(EMERGENT_WORK.FOUND_BY),
                    row.get(EMERGENT_WORK.FOUND_AT).toInstant(),
                    row.get(EMERGENT_WORK.REASON),
                    row.get(CHANGE.ACTOR_NAME),
                    row.get(EMERGENT_WORK.CHANGE_ID)));
  }

  /** The last word on each loop that anything was said of, by tag. */
  List<ScopeLine> lines(DSLContext sql, long outage) {
    return sql.select(OUTAGE_SCOPE.asterisk())
        .select(POINT.TAG, CHANGE.ACTOR_NAME, CHANGE.MADE_AT)
        .from(OUTAGE_SCOPE)
        .join(POINT)
        .on(POINT.ID.eq(OUTAGE_SCOPE.POINT_ID))
        .join(CHANGE)
        .on(CHANGE.ID.eq(OUTAGE_SCOPE.CHANGE_ID))
        .where(
            OUTAGE_SCOPE.ID.in(
                DSL.select(DSL.max(OUTAGE_SCOPE.ID))
                    .from(OUTAGE_SCOPE)
                    .where(OUTAGE_SCOPE.OUTAGE_ID.eq(outage))
                    .groupBy(OUTAGE_SCOPE.POINT_ID)))
        .orderBy(POINT.TAG_KEY)
        .fetch(ScopeStore::line);
  }

  private static ScopeLine line(Record row) {
    return new ScopeLine(
        row.get(OUTAGE_SCOPE.POINT_ID),
        row.get(POINT.TAG),
        row.get(OUTAGE_SCOPE.TAKEN),
        List.copyOf(Work.read(row.get(OUTAGE_SCOPE.WORKS))),
        row.get(OUTAGE_SCOPE.REASON),
        row.get(CHANGE.ACTOR_NAME),
        row.get(CHANGE.MADE_AT).toInstant());
  }

  /** The shop's newest steps of each kind of work that it wrote any for. */
  Map<Work, WorkSteps.Written> templates(DSLContext sql) {
    Map<Work, WorkSteps.Written> newest = new EnumMap<>(Work.class);
    sql.selectFrom(WORK_TEMPLATE)
        .orderBy(WORK_TEMPLATE.VERSION_NO)
        .forEach(
            row ->
                Work.named(row.getWork())
                    .ifPresent(
                        work ->
                            newest.put(
                                work,
                                new WorkSteps.Written(
                                    row.getVersionNo(), row.getSteps().lines().toList()))));
    return newest;
  }

  void addTemplate(Tx tx, Work work, int version, List<String> steps) {
    WorkTemplateRecord row = tx.row(WORK_TEMPLATE);
    row.setWork(work.word());
    row.setVersionNo(version);
    row.setSteps(String.join("\n", steps));
    tx.insert(row);
  }
}
