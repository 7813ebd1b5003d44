package loopwright.matching;

import org.jspecify.annotations.Nullable;

/**
 * What the maker's data sheet of a model says that only some rules ask for.
 *
 * @param towardProbe connector on the probe's side
 * @param towardDriver connector on the driver's side
 * @param celsius temperatures that the part stands, °C
 * @param entity entity parameters, inputs or outputs as the kind of part has them
 */
public record PartSheet(
    @Nullable Connector towardProbe,
    @Nullable Connector towardDriver,
    Range celsius,
    @Nullable Approval approval,
    Entity entity) {
  public static final PartSheet NOT_GIVEN =
      new PartSheet(null, null, Range.NOT_SAID, null, Entity.NOT_GIVEN);

  public PartSheet withConnectors(@Nullable Connector nearProbe, @Nullable Connector nearDriver) {
    return new PartSheet(nearProbe, nearDriver, celsius, approval, entity);
  }

  public PartSheet withCelsius(Range rating) {
    return new PartSheet(towardProbe, towardDriver, rating, approval, entity);
  }

  public PartSheet withApproval(@Nullable Approval other) {
    return new PartSheet(towardProbe, towardDriver, celsius, other, entity);
  }

  public PartSheet withEntity(Entity other) {
    return new PartSheet(towardProbe, towardDriver, celsius, approval, other);
  }

  /** What this one doesn't say is taken from the other one, field by field. */
  public PartSheet filledBy(PartSheet other) {
    return new PartSheet(
        towardProbe == null ? other.towardProbe : towardProbe,
        towardDriver == null ? other.towardDriver : towardDriver,
        celsius.isNotSaid() ? other.celsius : celsius,
        approval == null ? other.approval : approval,
        entity.isNotGiven() ? other.entity : entity);
  }
}
