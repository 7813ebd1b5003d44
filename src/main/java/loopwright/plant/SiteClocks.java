package loopwright.plant;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;
import loopwright.time.SiteMoment;
import org.jspecify.annotations.Nullable;

/**
 * Whose clock shows a moment: that of the site where the point is.
 *
 * @param byPoint zones by the points' numbers
 * @param otherwise for what stands at no point
 * @param several whether the sites keep different clocks, so that a moment must name its own
 */
public record SiteClocks(Map<Long, ZoneId> byPoint, ZoneId otherwise, boolean several) {

  public SiteClocks {
    byPoint = Map.copyOf(byPoint);
  }

  public ZoneId of(@Nullable Long point) {
    return point == null ? otherwise : byPoint.getOrDefault(point, otherwise);
  }

  /** The moment as that clock shows it, with the zone's name where clocks differ. */
  public String shown(Instant moment, @Nullable Long point) {
    ZoneId zone = of(point);
    String time = SiteMoment.shown(moment, zone);
    return several ? time + " " + zone.getId() : time;
  }
}
