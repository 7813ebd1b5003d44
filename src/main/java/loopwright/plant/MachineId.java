package loopwright.plant;

/** Number of a machine. */
public record MachineId(long number) {}
