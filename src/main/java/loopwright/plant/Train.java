package loopwright.plant;

/** Machines on one shaft line that start, stop and trip together. */
public record Train(TrainId id, SiteId site, String code, String name, int version) {}
