package loopwright.spare;

import static loopwright.db.gen.Tables.COMPONENT;
import static loopwright.db.gen.Tables.SPARE_RESERVATION;

import java.util.List;
import org.jooq.DSLContext;

/** Every reservation that was ever made for an outage, released or not. */
final class ReservedStore {

  List<Reserved> ofOutage(DSLContext sql, long outage) {
    return sql.select(SPARE_RESERVATION.asterisk())
        .select(COMPONENT.KIND, COMPONENT.LABEL)
        .from(SPARE_RESERVATION)
        .join(COMPONENT)
        .on(COMPONENT.ID.eq(SPARE_RESERVATION.COMPONENT_ID))
        .where(SPARE_RESERVATION.OUTAGE_ID.eq(outage))
        .orderBy(SPARE_RESERVATION.ID)
        .fetch(
            row ->
                new Reserved(
                    row.get(SPARE_RESERVATION.POINT_ID),
                    row.get(SPARE_RESERVATION.COMPONENT_ID),
                    "%s %s for the %s"
                        .formatted(
                            row.get(COMPONENT.KIND),
                            row.get(COMPONENT.LABEL),
                            row.get(SPARE_RESERVATION.SLOT))));
  }
}
