package loopwright.plant;

import java.util.List;

/** A machine with its points in the order of a walk along the shaft. */
public record MachineWalk(Machine machine, List<Point> points) {}
