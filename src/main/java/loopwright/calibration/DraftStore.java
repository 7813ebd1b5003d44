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
import loopwright.web.Form;
import org.jooq.DSLContext;

/** Curves that are being typed: one a person and point, as the form held it. */
final class DraftStore {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final TypeReference<Map<String, List<String>>> FIELDS = new TypeReference<>() {};
  private static final Set<String> NOT_TYPED = Set.of("csrf", "do", "version", "block", "replace");
  private static final String STAGE = "curve";

  /** What was typed so far, and when it was put aside. */
  record Draft(Form form, Instant savedAt) {}

  /** A draft that waits: of which loop, since when. */
  record Waiting(long point, String tag, Instant savedAt) {}

  Optional<Draft> find(DSLContext sql, long point, long person) {
    return row(sql, point, person)
        .map(row -> new Draft(form(row.getTyped()), row.getSavedAt().toInstant()));
  }

  /** All of that person, the newest first. */
  List<Waiting> of(DSLContext sql, long person) {
    return sql.select(POINT.ID, POINT.TAG, CALIBRATION_DRAFT.SAVED_AT)
        .from(CALIBRATION_DRAFT)
        .join(POINT)
        .on(POINT.ID.eq(CALIBRATION_DRAFT.POINT_ID))
        .where(CALIBRATION_DRAFT.PERSON_ID.eq(person))
        .orderBy(CALIBRATION_DRAFT.SAVED_AT.desc(), CALIBRATION_DRAFT.ID.desc())
        .fetch(row -> new Waiting(row.value1(), row.value2(), row.value3().toInstant()));
  }

  /**
   * @return the draft's number
   */
  long save(Tx tx, long point, long person, Form form) {
    CalibrationStore.hold(tx, point);
    CalibrationDraftRecord row =
        row(tx.sql(), point, person).orElseGet(() -> fresh(tx, point, person));
    row.setTyped(text(form));
    row.setSavedAt(Tx.moment(tx.at()));
    if (row.getId() == null) {
      tx.insert(row);
    } else {
      tx.update(row);
    }
    return row.getId();
  }

  private static CalibrationDraftRecord fresh(Tx tx, long point, long person) {
    CalibrationDraftRecord row = tx.row(CALIBRATION_DRAFT);
    row.setPointId(point);
    row.setPersonId(person);
    row.setStage(STAGE);
    return row;
  }

  void discard(Tx tx, long point, long person) {
    row(tx.sql(), point, person).ifPresent(tx::delete);
  }

  private static Optional<CalibrationDraftRecord> row(DSLContext sql, long point, long person) {
    return sql.fetchOptional(
        CALIBRATION_DRAFT,
        CALIBRATION_DRAFT
            .POINT_ID
            .eq(point)
            .and(CALIBRATION_DRAFT.PERSON_ID.eq(person))
            .and(CALIBRATION_DRAFT.STAGE.eq(STAGE)));
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
