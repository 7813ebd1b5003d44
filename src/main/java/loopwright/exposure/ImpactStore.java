package loopwright.exposure;

import static loopwright.db.gen.Tables.CALIBRATION;
import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.IMPACT_REVIEW;
import static loopwright.db.gen.Tables.IMPACT_SIGNOFF;
import static loopwright.db.gen.Tables.PERSON;
import static loopwright.db.gen.Tables.POINT;
import static loopwright.db.gen.Tables.REFERENCE_STANDARD;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import loopwright.db.Chunks;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.ImpactReviewRecord;
import loopwright.db.gen.tables.records.ImpactSignoffRecord;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/** Impact reviews and their sign-offs. Insert-only. */
final class ImpactStore {
  private static final int AT_ONCE = 1_000;

  long open(Tx tx, long calibration, long point) {
    ImpactReviewRecord row = tx.row(IMPACT_REVIEW);
    row.setCalibrationId(calibration);
    row.setPointId(point);
    return tx.insert(row).getId();
  }

  void open(Tx tx, long standard, SecondThought thought) {
    ImpactReviewRecord row = tx.row(IMPACT_REVIEW);
    row.setCalibrationId(thought.calibration());
    row.setPointId(thought.point());
    row.setStandardId(standard);
    row.setTold(String.join("\n", thought.told()));
    tx.insert(row);
  }

  /** The calibrations for which the error of that standard opened a review. */
  Set<Long> opened(DSLContext sql, long standard) {
    return sql.select(IMPACT_REVIEW.CALIBRATION_ID)
        .from(IMPACT_REVIEW)
        .where(IMPACT_REVIEW.STANDARD_ID.eq(standard))
        .fetchSet(IMPACT_REVIEW.CALIBRATION_ID);
  }

  /** Until this transaction ends, nobody else opens reviews for these loops. */
  void hold(Tx tx, Collection<Long> points) {
    for (List<Long> some : Chunks.of(new TreeSet<>(points), AT_ONCE)) {
      tx.sql()
          .select(POINT.ID)
          .from(POINT)
          .where(POINT.ID.in(some))
          .orderBy(POINT.ID)
          .forUpdate()
          .fetch();
    }
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
            REFERENCE_STANDARD.CODE,
            IMPACT_REVIEW.TOLD,
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
        .leftJoin(REFERENCE_STANDARD)
        .on(REFERENCE_STANDARD.ID.eq(IMPACT_REVIEW.STANDARD_ID))
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
        row.get(REFERENCE_STANDARD.CODE),
        lines(row.get(IMPACT_REVIEW.TOLD)),
        row.get(IMPACT_SIGNOFF.OUTCOME) == null ? Optional.empty() : Optional.of(signOff(row)));
  }

  private static ImpactReview.SignOff signOff(Record row) {
    return new ImpactReview.SignOff(
        row.get(PERSON.FULL_NAME),
        row.get(IMPACT_SIGNOFF.SIGNED_AT).toInstant(),
        ImpactOutcome.ofWord(row.get(IMPACT_SIGNOFF.OUTCOME)),
        row.get(IMPACT_SIGNOFF.WORDS),
        lines(row.get(IMPACT_SIGNOFF.TOLD)));
  }

  private static List<String> lines(@Nullable String text) {
    return text == null ? List.of() : text.lines().filter(line -> !line.isBlank()).toList();
  }
}
