package loopwright.loop;

import java.util.Collection;
import java.util.Map;
import loopwright.matching.PlaceView;
import org.jooq.DSLContext;

/** What lies between drivers and their monitors; given by the feature that keeps it. */
@FunctionalInterface
public interface CircuitFacts {
  /** Nobody keeps it. */
  CircuitFacts NONE = (sql, points) -> Map.of();

  /**
   * As recorded today.
   *
   * @return by point; one of which nothing is recorded is not in it
   */
  Map<Long, Circuit> circuits(DSLContext sql, Collection<Long> points);

  /**
   * Behind one driver.
   *
   * @param barrier barrier or isolator; nothing if somebody looked and there is none; unknown if
   *     nobody said
   */
  record Circuit(Content barrier, PlaceView.FieldCable cable) {
    public static final Circuit NOT_SAID =
        new Circuit(new Content.Unknown(), PlaceView.FieldCable.NOT_SAID);
  }
}
