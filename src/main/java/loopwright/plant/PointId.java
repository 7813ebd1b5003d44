package loopwright.plant;

/** Number of a point. */
public record PointId(long number) {}
