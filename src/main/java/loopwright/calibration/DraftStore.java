package loopwright.calibration;

import static loopwright.db.gen.Tables.CALIBRATION_DRAFT;
import static loopwright.db.gen.Tables.POINT;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.CalibrationDraftRecord;
import loopwright.loop.PartSet;
import loopwright.web.Form;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Curves that are being typed: one a person and set of parts, as the form held it. */
final class DraftStore {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final TypeReference<Map<String, List<String>>> FIELDS = new TypeReference<>() {};
  private static final Set<String> NOT_TYPED = Set.of("csrf", "do", "version", "block", "replace");
  private static final String STAGE = "curve";

  /** What was typed so far, and when it was put aside. */
  record Draft(Form form, Instant savedAt) {}

  /**
   * A draft that waits since then.
   *
   * @param point null for a set on the bench
   * @param tag of that point
   * @param parts fingerprint of what is measured, where that isn't simply what is fitted
   */
  record Waiting(
      @Nullable Long point, @Nullable String tag, @Nullable String parts, Instant savedAt) {}

  Optional<Draft> find(DSLContext sql, TakenWith with, long person) {
    return row(sql, with, person)
        .map(row -> new Draft(form(row.getTyped()), row.getSavedAt().toInstant()));
  }

  /** All of that person, the newest first. */
  List<Waiting> of(DSLContext sql, long person) {
    return sql.select(
            POINT.ID, POINT.TAG, CALIBRATION_DRAFT.FINGERPRINT, CALIBRATION_DRAFT.SAVED_AT)
        .from(CALIBRATION_DRAFT)
        .leftJoin(POINT)
        .on(POINT.ID.eq(CALIBRATION_DRAFT.POINT_ID))
        .where(CALIBRATION_DRAFT.PERSON_ID.eq(person))
        .orderBy(CALIBRATION_DRAFT.SAVED_AT.desc(), CALIBRATION_DRAFT.ID.desc())
        .fetch(
            row -> new Waiting(row.value1(), row.value2(), row.value3(), row.value4().toInstant()));
  }

  /**
   * @return the draft's number
   */
  long save(Tx tx, TakenWith with, long person, Form form) {
    CalibrationStore.hold(tx, with);
    CalibrationDraftRecord row =
        row(tx.sql(), with, person).orElseGet(() -> fresh(tx, with, person));
    row.setTyped(text(form));
    row.setSavedAt(Tx.moment(tx.at()));
    if (row.getId() == null) {
      tx.insert(row);
    } else {
      tx.update(row);
    }
    return row.getId();
  }

  private static CalibrationDraftRecord fresh(Tx tx, TakenWith with, long person) {
    CalibrationDraftRecord row = tx.row(CALIBRATION_DRAFT);
    row.setPointId(with.atPoint());
    row.setFingerprint(with.parts().map(PartSet::fingerprint).orElse(null));
    row.setPersonId(person);
    row.setStage(STAGE);
    return row;
  }

  void discard(Tx tx, TakenWith with, long person) {
    row(tx.sql(), with, person).ifPresent(tx::delete);
  }

  private static Optional<CalibrationDraftRecord> row(DSLContext sql, TakenWith with, long person) {
    return sql.fetchOptional(
        CALIBRATION_DRAFT,
        of(with)
            .and(CALIBRATION_DRAFT.PERSON_ID.eq(person))
            .and(CALIBRATION_DRAFT.STAGE.eq(STAGE)));
  }

  private static Condition of(TakenWith with) {
    Long point = with.atPoint();
    String parts = with.parts().map(PartSet::fingerprint).orElse(null);
    return (point == null
            ? CALIBRATION_DRAFT.POINT_ID.isNull()
            : CALIBRATION_DRAFT.POINT_ID.eq(point))
        .and(
            parts == null
                ? CALIBRATION_DRAFT.FINGERPRINT.isNull()
                : CALIBRATION_DRAFT.FINGERPRINT.eq(parts));
  }

  private static String text(Form form) {
    Map<String, List<String>> typed = new TreeMap<>(form.everything());
    typed.keySet().removeAll(NOT_TYPED);
    try {
      return JSON.writeValueAsString(typed);
    } catch (JsonProcessingException cannotHappen) {
      throw new IllegalStateException(cannotHappen);
    }
  }

  private static Form form(String text) {
    try {
      Form form = Form.blank();
      JSON.readValue(text, FIELDS).forEach(form::put);
      return form;
    } catch (JsonProcessingException broken) {
      throw new IllegalStateException("A draft can't be read.", broken);
    }
  }
}
