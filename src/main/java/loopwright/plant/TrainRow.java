package loopwright.plant;

/**
 * A train in a list.
 *
 * @param points in use
 */
public record TrainRow(Train train, int machines, int points) {}
