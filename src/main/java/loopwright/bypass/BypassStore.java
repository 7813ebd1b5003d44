package loopwright.bypass;

import static loopwright.db.gen.Tables.BYPASS;
import static loopwright.db.gen.Tables.BYPASS_STEP;
import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.PERSON;
import static loopwright.db.gen.Tables.POINT;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.BypassRecord;
import loopwright.db.gen.tables.records.BypassStepRecord;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.Result;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/** Bypasses and what became of them. Insert-only. */
final class BypassStore {

  long add(Tx tx, NewBypass fresh) {
    BypassRecord row = tx.row(BYPASS);
    row.setPointId(fresh.point());
    row.setOutageId(fresh.outage());
    row.setSiteNumber(fresh.siteNumber());
    row.setInhibited(fresh.inhibited());
    row.setVoteMeanwhile(fresh.voteMeanwhile());
    row.setAuthoriser(fresh.authoriser());
    row.setOwnerName(fresh.owner());
    row.setBeganAt(Tx.moment(fresh.began()));
    row.setExpiresAt(Tx.moment(fresh.expires()));
    return tx.insert(row).getId();
  }

  /**
   * @param removedBy repeated in removal and proof; null for a hand-over
   */
  void step(
      Tx tx,
      long bypass,
      String step,
      long person,
      @Nullable Long removedBy,
      String toWhom,
      Instant at,
      String note) {
    BypassStepRecord row = tx.row(BYPASS_STEP);
    row.setBypassId(bypass);
    row.setStep(step);
    row.setPersonId(person);
    row.setRemovedBy(removedBy);
    row.setToWhom(toWhom);
    row.setHappenedAt(Tx.moment(at));
    row.setNote(note);
    tx.insert(row);
  }

  /** Makes other changes of this bypass's loop wait until this one is through. */
  void hold(Tx tx, long point) {
    tx.sql().selectOne().from(POINT).where(POINT.ID.eq(point)).forUpdate().fetch();
  }

  /** The person who is called so, if exactly one is. */
  Optional<Long> personCalled(DSLContext sql, String name) {
    List<Long> called =
        sql.select(PERSON.ID)
            .from(PERSON)
            .where(DSL.lower(PERSON.FULL_NAME).eq(name.toLowerCase(Locale.ROOT)))
            .or(PERSON.LOGIN.eq(name.toLowerCase(Locale.ROOT)))
            .limit(2)
            .fetch(PERSON.ID);
    return called.size() == 1 ? Optional.of(called.get(0)) : Optional.empty();
  }

  /** Under that number of the site's procedure, newest first. */
  List<Bypass> numbered(DSLContext sql, long point, String siteNumber) {
    return fetch(
        sql,
        BYPASS
            .POINT_ID
            .eq(point)
            .and(DSL.lower(BYPASS.SITE_NUMBER).eq(siteNumber.toLowerCase(Locale.ROOT))),
        20);
  }

  Optional<Bypass> one(DSLContext sql, long id) {
    return fetch(sql, BYPASS.ID.eq(id), 1).stream().findFirst();
  }

  /** Those whose removal nobody has proved, soonest to expire first. */
  List<Bypass> open(DSLContext sql, int most) {
    Condition proved =
        DSL.exists(
            DSL.selectOne()
                .from(BYPASS_STEP)
                .where(BYPASS_STEP.BYPASS_ID.eq(BYPASS.ID))
                .and(BYPASS_STEP.STEP.eq(Bypass.PROVED)));
    return fetch(sql, DSL.not(proved), most).stream()
        .sorted(Comparator.comparing(Bypass::expires))
        .toList();
  }

  /** Newest first. */
  List<Bypass> before(DSLContext sql, long id, int most) {
    return fetch(sql, BYPASS.ID.lt(id), most);
  }

  List<Bypass> ofPoint(DSLContext sql, long point, int most) {
    return fetch(sql, BYPASS.POINT_ID.eq(point), most);
  }

  List<Bypass> ofOutage(DSLContext sql, long outage, int most) {
    return fetch(sql, BYPASS.OUTAGE_ID.eq(outage), most);
  }

  private static List<Bypass> fetch(DSLContext sql, Condition which, int most) {
    Result<Record> found =
        sql.select(BYPASS.asterisk())
            .select(POINT.TAG, CHANGE.ACTOR_NAME, CHANGE.MADE_AT)
            .from(BYPASS)
            .join(POINT)
            .on(POINT.ID.eq(BYPASS.POINT_ID))
            .join(CHANGE)
            .on(CHANGE.ID.eq(BYPASS.CHANGE_ID))
            .where(which)
            .orderBy(BYPASS.ID.desc())
            .limit(most)
            .fetch();
    Map<Long, List<Bypass.Step>> steps = steps(sql, found.getValues(BYPASS.ID));
    return found.map(row -> bypass(row, steps.getOrDefault(row.get(BYPASS.ID), List.of())));
  }

  private static Map<Long, List<Bypass.Step>> steps(DSLContext sql, List<Long> bypasses) {
    return sql.select(BYPASS_STEP.asterisk())
        .select(PERSON.FULL_NAME, CHANGE.ACTOR_ID)
        .from(BYPASS_STEP)
        .join(PERSON)
        .on(PERSON.ID.eq(BYPASS_STEP.PERSON_ID))
        .join(CHANGE)
        .on(CHANGE.ID.eq(BYPASS_STEP.CHANGE_ID))
        .where(BYPASS_STEP.BYPASS_ID.in(bypasses))
        .orderBy(BYPASS_STEP.ID)
        .fetchGroups(
            BYPASS_STEP.BYPASS_ID,
            row ->
                new Bypass.Step(
                    row.get(BYPASS_STEP.STEP),
                    row.get(BYPASS_STEP.PERSON_ID),
                    Optional.ofNullable(row.get(CHANGE.ACTOR_ID))
                        .orElse(row.get(BYPASS_STEP.PERSON_ID)),
                    row.get(PERSON.FULL_NAME),
                    row.get(BYPASS_STEP.TO_WHOM),
                    row.get(BYPASS_STEP.HAPPENED_AT).toInstant(),
                    row.get(BYPASS_STEP.NOTE)));
  }

  private static Bypass bypass(Record row, List<Bypass.Step> steps) {
    return new Bypass(
        row.get(BYPASS.ID),
        row.get(BYPASS.POINT_ID),
        row.get(POINT.TAG),
        row.get(BYPASS.OUTAGE_ID),
        row.get(BYPASS.SITE_NUMBER),
        row.get(BYPASS.INHIBITED),
        row.get(BYPASS.VOTE_MEANWHILE),
        row.get(BYPASS.AUTHORISER),
        row.get(BYPASS.OWNER_NAME),
        row.get(BYPASS.BEGAN_AT).toInstant(),
        row.get(BYPASS.EXPIRES_AT).toInstant(),
        row.get(CHANGE.ACTOR_NAME),
        row.get(CHANGE.MADE_AT).toInstant(),
        steps);
  }
}
