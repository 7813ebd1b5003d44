package loopwright.plant;

/** Where a point is. */
public record PointPlace(Site site, Train train, Machine machine) {}
