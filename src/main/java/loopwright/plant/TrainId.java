package loopwright.plant;

/** Number of a train. */
public record TrainId(long number) {}
