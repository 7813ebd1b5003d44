package loopwright.plant;

import java.time.ZoneId;
import loopwright.problem.Text;

/**
 * What is known of a site.
 *
 * @param zone its clock: a bare date typed here means the start of that day
 * @param adopting whether it is still being read in: unknowns are then grouped by train
 */
public record SiteDetails(String code, String name, ZoneId zone, boolean adopting) {
  /** Refuses a missing or too long code or name, and an offset in place of a zone. */
  public SiteDetails {
    code = Text.needed("the site's code", code, 20);
    name = Text.needed("the site's name", name, 120);
    zone = Zones.read(zone.getId());
  }
}
