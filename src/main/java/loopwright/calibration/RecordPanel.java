package loopwright.calibration;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.web.Actor;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/**
 * What another feature shows on the page of one record; its template has a fragment {@code
 * panel(model)}.
 */
public interface RecordPanel {
  String template();

  /** Empty where it has nothing to say of that record. */
  Optional<Object> model(DSLContext sql, Calibrated record, Reader reader);

  /**
   * A word or two on each of many records, for their list; of those it has nothing to say, none.
   */
  default Map<Long, String> marks(DSLContext sql, List<Calibrated> records) {
    return Map.of();
  }

  /**
   * @throws loopwright.problem.Refused if that person may not let another record stand in the place
   *     of this one
   */
  default void refuseSuperseding(DSLContext sql, Calibrated record, Actor actor) {}

  /** Who looks at it, in which units. */
  record Reader(Actor actor, UnitsShown units) {}
}
