package loopwright.loop;

import java.util.Collection;
import java.util.Map;
import loopwright.matching.PlaceView;
import loopwright.time.Viewpoint;
import org.jooq.DSLContext;

/** What is known of points and of the channels they feed; given by the feature that keeps it. */
@FunctionalInterface
public interface PlaceFacts {
  /** Nothing is known of any point. */
  PlaceFacts NONE = (sql, points, viewpoint) -> Map.of();

  /**
   * Settings of channels as they held at that moment, as known then; what is around a point is
   * today's.
   *
   * @return by point; one of which nothing is known may be missing
   */
  Map<Long, PlaceView> places(DSLContext sql, Collection<Long> points, Viewpoint viewpoint);
}
