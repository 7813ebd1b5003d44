package loopwright.pack;

import java.util.List;
import java.util.Map;
import org.jooq.DSLContext;

/** What parts are put aside for loops; given by the feature that keeps reservations. */
@FunctionalInterface
public interface PutAside {
  /** Where nobody keeps any. */
  PutAside NOTHING = (sql, outage) -> Map.of();

  /** By point, one line a part: what it is, where it lies, how it was judged. */
  Map<Long, List<String>> ofOutage(DSLContext sql, long outage);
}
