package loopwright.plant;

/**
 * One casing of a train.
 *
 * @param place order along the shaft, counted from 1 at the drive end
 */
public record Machine(
    MachineId id, TrainId train, String code, String name, int place, int version) {}
