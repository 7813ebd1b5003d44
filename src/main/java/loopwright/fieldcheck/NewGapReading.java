package loopwright.fieldcheck;

import java.time.Instant;
import loopwright.cause.TappingPoint;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.units.Dimension;
import loopwright.units.Reported;

/**
 * A gap voltage about to be kept.
 *
 * @param point at which it was read
 * @param readBy as they are called
 * @param volts as typed, in V or mV; negative as the driver gives it
 * @param rotorPosition in words; may be empty
 * @param note may be empty
 * @param origin {@code entered} or {@code imported}
 */
public record NewGapReading(
    long point,
    Instant readAt,
    String readBy,
    Reported volts,
    TappingPoint tappedAt,
    MachineState state,
    Warmth warmth,
    String rotorPosition,
    String note,
    String origin) {

  /** No supply of such loops goes beyond this many volts; common practice, no source. */
  static final double LOWEST_VOLTS = -30;

  /** Refuses texts that are too long and a voltage that no loop of this kind can give. */
  public NewGapReading {
    readBy = Text.needed("who read it", readBy, 120);
    rotorPosition = Text.kept("the rotor's position", rotorPosition, 120);
    note = Text.kept("the note", note, 2000);
    volts(volts);
  }

  /**
   * The same voltage, if a loop can give it.
   *
   * @throws Refused if it is positive, or beyond what any supply allows
   */
  static Reported volts(Reported volts) {
    if (volts.unit().dimension() != Dimension.VOLTAGE) {
      throw new IllegalArgumentException(volts.unit().symbol() + " is no unit of voltage.");
    }
    if (volts.canonical() > 0) {
      throw new Refused(FieldCheckProblem.POSITIVE_VOLTS, volts);
    }
    if (volts.canonical() < LOWEST_VOLTS) {
      throw new Refused(FieldCheckProblem.BEYOND_SUPPLY, volts);
    }
    return volts;
  }
}
