package loopwright.temporary;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.COMPONENT;
import static loopwright.db.gen.Tables.OCCUPANCY;
import static loopwright.db.gen.Tables.POINT;
import static loopwright.db.gen.Tables.TEMPORARY_FIT;
import static loopwright.db.gen.Tables.TEMPORARY_FIT_STEP;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.db.Chunks;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.TemporaryFitRecord;
import loopwright.db.gen.tables.records.TemporaryFitStepRecord;
import loopwright.time.Span;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.Result;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/**
 * Temporary fits and what was settled of them. Insert-only. Whether the part is still in there is
 * read from what is believed to be fitted: the stay began before the fit was entered and has no
 * end.
 */
final class TemporaryStore {
  private static final Condition IN_THERE =
      DSL.exists(
          DSL.selectOne()
              .from(OCCUPANCY)
              .where(
                  OCCUPANCY.POINT_ID.eq(TEMPORARY_FIT.POINT_ID),
                  OCCUPANCY.SLOT.eq(TEMPORARY_FIT.SLOT),
                  OCCUPANCY.VALID_UNTIL.eq(Span.utc(Span.OPEN)),
                  OCCUPANCY.COMPONENT_ID.eq(TEMPORARY_FIT.COMPONENT_ID),
                  OCCUPANCY.VALID_FROM.le(CHANGE.MADE_AT)));

  private static final Condition STAYS =
      DSL.exists(
          DSL.selectOne()
              .from(TEMPORARY_FIT_STEP)
              .where(
                  TEMPORARY_FIT_STEP.TEMPORARY_FIT_ID.eq(TEMPORARY_FIT.ID),
                  TEMPORARY_FIT_STEP.STEP.eq("stays")));

  /** What is said of a fit. */
  record Said(LocalDate returnOn, String insteadOf, String reason, String askedBy) {}

  long add(Tx tx, long point, String slot, long component, Said said) {
    TemporaryFitRecord row = tx.row(TEMPORARY_FIT);
    row.setPointId(point);
    row.setSlot(slot);
    row.setComponentId(component);
    row.setReturnOn(said.returnOn());
    row.setInsteadOf(said.insteadOf());
    row.setReason(said.reason());
    row.setAskedBy(said.askedBy());
    return tx.insert(row).getId();
  }

  /**
   * @param returnOn another day; null where it stays for good
   */
  void step(Tx tx, long fit, @Nullable LocalDate returnOn, String note) {
    TemporaryFitStepRecord row = tx.row(TEMPORARY_FIT_STEP);
    row.setTemporaryFitId(fit);
    row.setStep(returnOn == null ? "stays" : "extended");
    row.setReturnOn(returnOn);
    row.setNote(note);
    tx.insert(row);
  }

  Optional<TemporaryFit> one(DSLContext sql, long id) {
    return fetch(sql, TEMPORARY_FIT.ID.eq(id)).stream().findFirst();
  }

  /** All of a loop, newest first. */
  List<TemporaryFit> ofPoint(DSLContext sql, long point) {
    return fetch(sql, TEMPORARY_FIT.POINT_ID.eq(point));
  }

  /** All of a part, newest first. */
  List<TemporaryFit> ofComponent(DSLContext sql, long component) {
    return fetch(sql, TEMPORARY_FIT.COMPONENT_ID.eq(component));
  }

  /** Those still in there and not settled. */
  List<TemporaryFit> open(DSLContext sql) {
    return fetch(sql, IN_THERE.andNot(STAYS));
  }

  /** What was still in there at that moment, and not settled by then. */
  List<TemporaryFit> openAt(DSLContext sql, Collection<Long> points, Instant at) {
    Condition inThere =
        DSL.exists(
            DSL.selectOne()
                .from(OCCUPANCY)
                .where(
                    OCCUPANCY.POINT_ID.eq(TEMPORARY_FIT.POINT_ID),
                    OCCUPANCY.SLOT.eq(TEMPORARY_FIT.SLOT),
                    OCCUPANCY.VALID_UNTIL.gt(Span.utc(at)),
                    OCCUPANCY.COMPONENT_ID.eq(TEMPORARY_FIT.COMPONENT_ID),
                    OCCUPANCY.VALID_FROM.le(CHANGE.MADE_AT)));
    List<TemporaryFit> open = new ArrayList<>();
    for (List<Long> some : Chunks.of(points, 500)) {
      fetch(sql, TEMPORARY_FIT.POINT_ID.in(some).and(CHANGE.MADE_AT.le(Span.utc(at))).and(inThere))
          .stream()
          .map(fit -> fit.asOf(at))
          .filter(fit -> !fit.staysForGood())
          .forEach(open::add);
    }
    return open;
  }

  List<TemporaryFit> open(DSLContext sql, Collection<Long> points) {
    List<TemporaryFit> open = new ArrayList<>();
    for (List<Long> some : Chunks.of(points, 500)) {
      open.addAll(fetch(sql, TEMPORARY_FIT.POINT_ID.in(some).and(IN_THERE).andNot(STAYS)));
    }
    return open;
  }

  private static List<TemporaryFit> fetch(DSLContext sql, Condition which) {
    Field<Boolean> inThere = DSL.field(IN_THERE).as("in_there");
    Result<? extends Record> found =
        sql.select(TEMPORARY_FIT.asterisk())
            .select(
                POINT.TAG,
                COMPONENT.LABEL,
                COMPONENT.KIND,
                CHANGE.ACTOR_NAME,
                CHANGE.MADE_AT,
                inThere)
            .from(TEMPORARY_FIT)
            .join(CHANGE)
            .on(CHANGE.ID.eq(TEMPORARY_FIT.CHANGE_ID))
            .join(POINT)
            .on(POINT.ID.eq(TEMPORARY_FIT.POINT_ID))
            .join(COMPONENT)
            .on(COMPONENT.ID.eq(TEMPORARY_FIT.COMPONENT_ID))
            .where(which)
            .orderBy(TEMPORARY_FIT.ID.desc())
            .fetch();
    Map<Long, List<TemporaryFit.Step>> steps = steps(sql, found.getValues(TEMPORARY_FIT.ID));
    return found.map(row -> fit(row, inThere, steps));
  }

  private static Map<Long, List<TemporaryFit.Step>> steps(DSLContext sql, List<Long> fits) {
    return fits.isEmpty()
        ? Map.of()
        : sql.select(TEMPORARY_FIT_STEP.asterisk())
            .select(CHANGE.ACTOR_NAME, CHANGE.MADE_AT)
            .from(TEMPORARY_FIT_STEP)
            .join(CHANGE)
            .on(CHANGE.ID.eq(TEMPORARY_FIT_STEP.CHANGE_ID))
            .where(TEMPORARY_FIT_STEP.TEMPORARY_FIT_ID.in(fits))
            .orderBy(TEMPORARY_FIT_STEP.ID)
            .fetchGroups(
                TEMPORARY_FIT_STEP.TEMPORARY_FIT_ID,
                row ->
                    new TemporaryFit.Step(
                        row.get(TEMPORARY_FIT_STEP.RETURN_ON),
                        row.get(TEMPORARY_FIT_STEP.NOTE),
                        row.get(CHANGE.ACTOR_NAME),
                        row.get(CHANGE.MADE_AT).toInstant()));
  }

  private static TemporaryFit fit(
      Record row, Field<Boolean> inThere, Map<Long, List<TemporaryFit.Step>> steps) {
    return new TemporaryFit(
        row.get(TEMPORARY_FIT.ID),
        row.get(TEMPORARY_FIT.POINT_ID),
        row.get(POINT.TAG),
        row.get(TEMPORARY_FIT.SLOT),
        row.get(TEMPORARY_FIT.COMPONENT_ID),
        row.get(COMPONENT.LABEL),
        row.get(COMPONENT.KIND),
        row.get(TEMPORARY_FIT.INSTEAD_OF),
        row.get(TEMPORARY_FIT.RETURN_ON),
        row.get(TEMPORARY_FIT.REASON),
        row.get(TEMPORARY_FIT.ASKED_BY),
        row.get(CHANGE.ACTOR_NAME),
        row.get(CHANGE.MADE_AT).toInstant(),
        row.get(inThere),
        steps.getOrDefault(row.get(TEMPORARY_FIT.ID), List.of()));
  }
}
