package loopwright.spare;

import java.util.List;
import org.jooq.DSLContext;

/**
 * A part that was put aside for a loop of an outage at some time.
 *
 * @param words kind, serial and slot
 */
public record Reserved(long point, long component, String words) {

  /** All of an outage, released or not. */
  public static List<Reserved> ofOutage(DSLContext sql, long outage) {
    return new ReservedStore().ofOutage(sql, outage);
  }
}
