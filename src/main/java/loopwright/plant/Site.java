package loopwright.plant;

import java.time.ZoneId;

/**
 * A plant with its own clock.
 *
 * @param version grows with each change
 */
public record Site(SiteId id, SiteDetails details, int version) {
  public String code() {
    return details.code();
  }

  public String name() {
    return details.name();
  }

  public ZoneId zone() {
    return details.zone();
  }
}
