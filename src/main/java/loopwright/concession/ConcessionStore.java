package loopwright.concession;

import static loopwright.db.gen.Tables.CONCESSION;
import static loopwright.db.gen.Tables.CONCESSION_STEP;
import static loopwright.db.gen.Tables.PERSON;
import static loopwright.db.gen.Tables.POINT;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.ConcessionRecord;
import loopwright.db.gen.tables.records.ConcessionStepRecord;
import loopwright.journal.KnownTimeStore;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/** Concessions and what became of them. Insert-only. */
final class ConcessionStore {

  long add(Tx tx, Asked asked, long askedBy) {
    ConcessionRecord row = tx.row(CONCESSION);
    row.setPointId(asked.point());
    row.setFingerprint(asked.fingerprint());
    row.setKind(asked.kind().word());
    row.setRules(String.join("\n", asked.rules()));
    row.setReason(asked.reason());
    row.setMeasure(asked.measure());
    row.setAskedBy(askedBy);
    row.setAskedAt(Tx.moment(tx.at()));
    row.setExpiresAt(Tx.moment(asked.expiresAt()));
    return tx.insert(row).getId();
  }

  void step(Tx tx, Concession concession, String step, @Nullable Long person, String note) {
    ConcessionStepRecord row = tx.row(CONCESSION_STEP);
    row.setConcessionId(concession.id());
    row.setAskedBy(concession.askedBy());
    row.setStep(step);
    row.setPersonId(person);
    row.setHappenedAt(Tx.moment(tx.at()));
    row.setNote(note);
    tx.insert(row);
  }

  Optional<Concession> one(DSLContext sql, long id) {
    return fetch(sql, CONCESSION.ID.eq(id)).stream().findFirst();
  }

  List<Concession> ofPoints(DSLContext sql, Collection<Long> points) {
    return points.isEmpty() ? List.of() : fetch(sql, CONCESSION.POINT_ID.in(points));
  }

  /** The same as known when the record ended with that entry; null for all there is. */
  List<Concession> ofPoints(DSLContext sql, Collection<Long> points, @Nullable Long entry) {
    List<Concession> all = ofPoints(sql, points);
    if (entry == null || all.isEmpty()) {
      return all;
    }
    List<Long> changes =
        all.stream().flatMap(one -> one.steps().stream()).map(Concession.Step::change).toList();
    Set<Long> known = KnownTimeStore.known(sql, entry, changes);
    return all.stream().map(concession -> concession.asKnownBy(known)).toList();
  }

  /** Those that nobody has ended or declined: waiting, standing or expired. */
  List<Concession> open(DSLContext sql, int most) {
    Condition ended =
        DSL.exists(
            DSL.selectOne()
                .from(CONCESSION_STEP)
                .where(CONCESSION_STEP.CONCESSION_ID.eq(CONCESSION.ID))
                .and(CONCESSION_STEP.STEP.ne("granted")));
    return fetch(sql, DSL.not(ended)).stream().limit(most).toList();
  }

  /** Newest first. */
  List<Concession> before(DSLContext sql, long id, int most) {
    List<Long> numbers =
        sql.select(CONCESSION.ID)
            .from(CONCESSION)
            .where(CONCESSION.ID.lt(id))
            .orderBy(CONCESSION.ID.desc())
            .limit(most)
            .fetch(CONCESSION.ID);
    return fetch(sql, CONCESSION.ID.in(numbers));
  }

  private static List<Concession> fetch(DSLContext sql, Condition which) {
    var found =
        sql.select(CONCESSION.asterisk(), POINT.TAG, PERSON.FULL_NAME)
            .from(CONCESSION)
            .join(POINT)
            .on(POINT.ID.eq(CONCESSION.POINT_ID))
            .join(PERSON)
            .on(PERSON.ID.eq(CONCESSION.ASKED_BY))
            .where(which)
            .orderBy(CONCESSION.ID.desc())
            .fetch();
    Map<Long, List<Concession.Step>> steps = steps(sql, found.getValues(CONCESSION.ID));
    return found.map(row -> concession(row, steps.getOrDefault(row.get(CONCESSION.ID), List.of())));
  }

  private static Map<Long, List<Concession.Step>> steps(DSLContext sql, List<Long> concessions) {
    return sql.select(CONCESSION_STEP.asterisk(), PERSON.FULL_NAME)
        .from(CONCESSION_STEP)
        .leftJoin(PERSON)
        .on(PERSON.ID.eq(CONCESSION_STEP.PERSON_ID))
        .where(CONCESSION_STEP.CONCESSION_ID.in(concessions))
        .orderBy(CONCESSION_STEP.ID)
        .fetchGroups(CONCESSION_STEP.CONCESSION_ID, ConcessionStore::step);
  }

  private static Concession.Step step(Record row) {
    String who = row.get(PERSON.FULL_NAME);
    return new Concession.Step(
        row.get(CONCESSION_STEP.STEP),
        who == null ? "" : who,
        row.get(CONCESSION_STEP.HAPPENED_AT).toInstant(),
        row.get(CONCESSION_STEP.NOTE),
        row.get(CONCESSION_STEP.CHANGE_ID));
  }

  private static Concession concession(Record row, List<Concession.Step> steps) {
    return new Concession(
        row.get(CONCESSION.ID),
        row.get(CONCESSION.POINT_ID),
        row.get(POINT.TAG),
        row.get(CONCESSION.FINGERPRINT),
        ConcessionKind.of(row.get(CONCESSION.KIND)),
        Arrays.asList(row.get(CONCESSION.RULES).split("\n")),
        row.get(CONCESSION.REASON),
        row.get(CONCESSION.MEASURE),
        row.get(CONCESSION.ASKED_BY),
        row.get(PERSON.FULL_NAME),
        row.get(CONCESSION.ASKED_AT).toInstant(),
        row.get(CONCESSION.EXPIRES_AT).toInstant(),
        steps);
  }
}
