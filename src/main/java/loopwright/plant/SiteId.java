package loopwright.plant;

/** Number of a site. */
public record SiteId(long number) {}
