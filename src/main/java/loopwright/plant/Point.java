package loopwright.plant;

/**
 * A tagged place on a machine where a probe looks at the shaft.
 *
 * @param version grows with each change
 */
public record Point(PointId id, MachineId machine, PointDetails details, int version) {
  public String tag() {
    return details.tag();
  }

  public PointKind kind() {
    return details.kind();
  }

  public boolean inUse() {
    return details.state() == PointState.IN_USE;
  }
}
