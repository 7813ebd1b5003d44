package loopwright.exposure;

import static loopwright.db.gen.Tables.CALIBRATION;
import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.IMPACT_REVIEW;
import static loopwright.db.gen.Tables.IMPACT_SIGNOFF;
import static loopwright.db.gen.Tables.PERSON;
import static loopwright.db.gen.Tables.POINT;

import java.util.List;
import java.util.Optional;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.ImpactReviewRecord;
import loopwright.db.gen.tables.records.ImpactSignoffRecord;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.impl.DSL;

/** Impact reviews and their sign-offs. Insert-only. */
final class ImpactStore {

  long open(Tx tx, long calibration, long point) {
    ImpactReviewRecord row = tx.row(IMPACT_REVIEW);
    row.setCalibrationId(calibration);
    row.setPointId(point);
    return tx.insert(row).getId();
  }

  void sign(
      Tx tx, long review, long person, ImpactOutcome outcome, String words, List<String> told) {
    ImpactSignoffRecord row = tx.row(IMPACT_SIGNOFF);
    row.setImpactReviewId(review);
    row.setPersonId(person);
    row.setOutcome(outcome.word());
    row.setWords(words);
    row.setTold(String.join("\n", told));
    row.setSignedAt(Tx.moment(tx.at()));
    tx.insert(row);
  }

  Optional<ImpactReview> one(DSLContext sql, long id) {
    return fetch(sql, IMPACT_REVIEW.ID.eq(id), 1).stream().findFirst();
  }

  Optional<ImpactReview> ofCalibration(DSLContext sql, long calibration) {
    return fetch(sql, IMPACT_REVIEW.CALIBRATION_ID.eq(calibration), 1).stream().findFirst();
  }

  /** Newest first. */
  List<ImpactReview> before(DSLContext sql, long id, boolean onlyOpen, int most) {
    Condition which = IMPACT_REVIEW.ID.lt(id);
    return fetch(sql, onlyOpen ? which.and(isOpen()) : which, most);
  }

  private static Condition isOpen() {
    return DSL.notExists(
        DSL.selectOne()
            .from(IMPACT_SIGNOFF)
            .where(IMPACT_SIGNOFF.IMPACT_REVIEW_ID.eq(IMPACT_REVIEW.ID)));
  }

  private static List<ImpactReview> fetch(DSLContext sql, Condition which, int most) {
    return sql.select(
            IMPACT_REVIEW.ID,
            IMPACT_REVIEW.POINT_ID,
            CALIBRATION.NUMBER,
            CALIBRATION.MEASURED_AT,
            CALIBRATION.ORIGIN,
            POINT.TAG,
            CHANGE.MADE_AT,
            PERSON.FULL_NAME,
            IMPACT_SIGNOFF.OUTCOME,
            IMPACT_SIGNOFF.WORDS,
            IMPACT_SIGNOFF.TOLD,
            IMPACT_SIGNOFF.SIGNED_AT)
        .from(IMPACT_REVIEW)
        .join(CALIBRATION)
        .on(CALIBRATION.ID.eq(IMPACT_REVIEW.CALIBRATION_ID))
        .join(POINT)
        .on(POINT.ID.eq(IMPACT_REVIEW.POINT_ID))
        .join(CHANGE)
        .on(CHANGE.ID.eq(IMPACT_REVIEW.CHANGE_ID))
        .leftJoin(IMPACT_SIGNOFF)
        .on(IMPACT_SIGNOFF.IMPACT_REVIEW_ID.eq(IMPACT_REVIEW.ID))
        .leftJoin(PERSON)
        .on(PERSON.ID.eq(IMPACT_SIGNOFF.PERSON_ID))
        .where(which)
        .orderBy(IMPACT_REVIEW.ID.desc())
        .limit(most)
        .fetch(ImpactStore::review);
  }

  private static ImpactReview review(Record row) {
    return new ImpactReview(
        row.get(IMPACT_REVIEW.ID),
        row.get(CALIBRATION.NUMBER),
        row.get(IMPACT_REVIEW.POINT_ID),
        row.get(POINT.TAG),
        row.get(CALIBRATION.MEASURED_AT).toInstant(),
        row.get(CALIBRATION.ORIGIN).equals("imported"),
        row.get(CHANGE.MADE_AT).toInstant(),
        row.get(IMPACT_SIGNOFF.OUTCOME) == null ? Optional.empty() : Optional.of(signOff(row)));
  }

  private static ImpactReview.SignOff signOff(Record row) {
    return new ImpactReview.SignOff(
        row.get(PERSON.FULL_NAME),
        row.get(IMPACT_SIGNOFF.SIGNED_AT).toInstant(),
        ImpactOutcome.ofWord(row.get(IMPACT_SIGNOFF.OUTCOME)),
        row.get(IMPACT_SIGNOFF.WORDS),
        row.get(IMPACT_SIGNOFF.TOLD).lines().filter(line -> !line.isBlank()).toList());
  }
}
