package loopwright.outage;

import static loopwright.db.gen.Tables.OUTAGE;
import static loopwright.db.gen.Tables.OUTAGE_STEP;
import static loopwright.db.gen.Tables.OUTAGE_TRAIN;
import static loopwright.db.gen.Tables.PERSON;
import static loopwright.db.gen.Tables.SITE;
import static loopwright.db.gen.Tables.TRAIN;

import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.db.DbProblem;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.OutageRecord;
import loopwright.db.gen.tables.records.OutageStepRecord;
import loopwright.db.gen.tables.records.OutageTrainRecord;
import loopwright.problem.Refused;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.Result;
import org.jooq.SelectConditionStep;
import org.jooq.impl.DSL;

/** Outages, their trains and steps. */
final class OutageStore {

  long add(Tx tx, long site, Outage.Details details) {
    OutageRecord row = tx.row(OUTAGE);
    row.setSiteId(site);
    fill(row, details);
    return tx.insert(row).getId();
  }

  /**
   * @param version that the changer saw
   */
  void change(Tx tx, long outage, int version, Outage.Details details) {
    OutageRecord row =
        tx.sql()
            .fetchOptional(OUTAGE, OUTAGE.ID.eq(outage).and(OUTAGE.VERSION.eq(version)))
            .orElseThrow(() -> new Refused(DbProblem.STALE));
    fill(row, details);
    tx.update(row);
  }

  private static void fill(OutageRecord row, Outage.Details details) {
    row.setName(details.name());
    row.setBeginsOn(details.begins());
    row.setEndsOn(details.ends());
    row.setTeam(details.team());
  }

  void addTrain(Tx tx, long outage, long train) {
    OutageTrainRecord row = tx.row(OUTAGE_TRAIN);
    row.setOutageId(outage);
    row.setTrainId(train);
    tx.insert(row);
  }

  void step(Tx tx, long outage, OutageState state, long person, String note) {
    OutageStepRecord row = tx.row(OUTAGE_STEP);
    row.setOutageId(outage);
    row.setStep(state.word());
    row.setPersonId(person);
    row.setHappenedAt(Tx.moment(tx.at()));
    row.setNote(note);
    tx.insert(row);
  }

  /** Makes other changes of this outage wait until this one is through. */
  void hold(Tx tx, long outage) {
    tx.sql().selectOne().from(OUTAGE).where(OUTAGE.ID.eq(outage)).forUpdate().fetch();
  }

  Optional<Outage> one(DSLContext sql, long id) {
    return outages(sql, chosen(sql, OUTAGE.ID.eq(id)).fetch()).stream().findFirst();
  }

  /** Those that begin last first. */
  List<Outage> newest(DSLContext sql, int most) {
    return fetch(sql, DSL.noCondition(), most);
  }

  /** Outages on that train that nobody has closed. */
  List<Outage> ofTrain(DSLContext sql, long train) {
    return fetch(
            sql,
            OUTAGE.ID.in(
                DSL.select(OUTAGE_TRAIN.OUTAGE_ID)
                    .from(OUTAGE_TRAIN)
                    .where(OUTAGE_TRAIN.TRAIN_ID.eq(train))),
            200)
        .stream()
        .filter(outage -> !outage.isClosed())
        .toList();
  }

  private static SelectConditionStep<Record> chosen(DSLContext sql, Condition which) {
    return sql.select(OUTAGE.asterisk())
        .select(SITE.NAME, SITE.ZONE)
        .from(OUTAGE)
        .join(SITE)
        .on(SITE.ID.eq(OUTAGE.SITE_ID))
        .where(which);
  }

  private static List<Outage> fetch(DSLContext sql, Condition which, int most) {
    return outages(
        sql,
        chosen(sql, which).orderBy(OUTAGE.BEGINS_ON.desc(), OUTAGE.ID.desc()).limit(most).fetch());
  }

  private static List<Outage> outages(DSLContext sql, Result<Record> found) {
    List<Long> ids = found.getValues(OUTAGE.ID);
    Map<Long, List<Outage.Standing>> trains = trains(sql, ids);
    Map<Long, List<Outage.Step>> steps = steps(sql, ids);
    return found.map(
        row ->
            outage(
                row,
                trains.getOrDefault(row.get(OUTAGE.ID), List.of()),
                steps.getOrDefault(row.get(OUTAGE.ID), List.of())));
  }

  private static Map<Long, List<Outage.Standing>> trains(DSLContext sql, List<Long> outages) {
    return sql.select(OUTAGE_TRAIN.OUTAGE_ID, TRAIN.ID, TRAIN.CODE)
        .from(OUTAGE_TRAIN)
        .join(TRAIN)
        .on(TRAIN.ID.eq(OUTAGE_TRAIN.TRAIN_ID))
        .where(OUTAGE_TRAIN.OUTAGE_ID.in(outages))
        .orderBy(TRAIN.CODE)
        .fetchGroups(
            OUTAGE_TRAIN.OUTAGE_ID,
            row -> new Outage.Standing(row.get(TRAIN.ID), row.get(TRAIN.CODE)));
  }

  private static Map<Long, List<Outage.Step>> steps(DSLContext sql, List<Long> outages) {
    return sql.select(OUTAGE_STEP.asterisk())
        .select(PERSON.FULL_NAME)
        .from(OUTAGE_STEP)
        .join(PERSON)
        .on(PERSON.ID.eq(OUTAGE_STEP.PERSON_ID))
        .where(OUTAGE_STEP.OUTAGE_ID.in(outages))
        .orderBy(OUTAGE_STEP.ID)
        .fetchGroups(
            OUTAGE_STEP.OUTAGE_ID,
            row ->
                new Outage.Step(
                    OutageState.ofWord(row.get(OUTAGE_STEP.STEP)),
                    row.get(PERSON.FULL_NAME),
                    row.get(OUTAGE_STEP.HAPPENED_AT).toInstant(),
                    row.get(OUTAGE_STEP.NOTE)));
  }

  private static Outage outage(Record row, List<Outage.Standing> trains, List<Outage.Step> steps) {
    return new Outage(
        row.get(OUTAGE.ID),
        row.get(OUTAGE.SITE_ID),
        row.get(SITE.NAME),
        ZoneId.of(row.get(SITE.ZONE)),
        row.get(OUTAGE.NAME),
        row.get(OUTAGE.BEGINS_ON),
        row.get(OUTAGE.ENDS_ON),
        row.get(OUTAGE.TEAM),
        row.get(OUTAGE.VERSION),
        trains,
        steps);
  }
}
