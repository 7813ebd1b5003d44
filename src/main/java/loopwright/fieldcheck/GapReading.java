package loopwright.fieldcheck;

import java.time.Instant;
import loopwright.cause.TappingPoint;
import loopwright.units.Reported;

/**
 * A gap voltage as it is kept.
 *
 * @param volts as typed; {@link Reported#canonical} gives V, negative
 * @param rotorPosition in words; may be empty
 * @param origin {@code entered} or {@code imported}
 * @param change that entered it
 */
public record GapReading(
    long id,
    long point,
    Instant readAt,
    String readBy,
    Reported volts,
    TappingPoint tappedAt,
    MachineState state,
    Warmth warmth,
    String rotorPosition,
    String note,
    String origin,
    long change) {

  /** Whether the two were taken in the same state and at the same place on the way. */
  public boolean comparesWith(GapReading other) {
    return state == other.state
        && tappedAt == other.tappedAt
        && (warmth == other.warmth
            || warmth == Warmth.NOT_RECORDED
            || other.warmth == Warmth.NOT_RECORDED);
  }
}
