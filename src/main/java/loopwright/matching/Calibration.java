package loopwright.matching;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The latest as-left calibration that concerns a loop.
 *
 * @param asLeftOn the day it was taken, in the site's zone
 * @param changedSince parts that are not the ones it was taken with, in words; empty when it
 *     belongs to exactly this combination
 * @param targetAlloy that it was taken on; empty if not said
 * @param averageScaleFactor end to end, mV/µm; null without a curve
 * @param elsewhere whether it was taken before these parts were fitted here, on a bench or at
 *     another loop
 * @param reservations why one taken elsewhere does not count for this loop, each a clause for after
 *     "but"
 */
public record Calibration(
    LocalDate asLeftOn,
    Outcome outcome,
    List<String> changedSince,
    String targetAlloy,
    @Nullable Double averageScaleFactor,
    boolean elsewhere,
    List<String> reservations) {

  public Calibration {
    changedSince = List.copyOf(changedSince);
    reservations = List.copyOf(reservations);
  }

  /** One taken here. */
  public Calibration(
      LocalDate asLeftOn,
      Outcome outcome,
      List<String> changedSince,
      String targetAlloy,
      @Nullable Double averageScaleFactor) {
    this(asLeftOn, outcome, changedSince, targetAlloy, averageScaleFactor, false, List.of());
  }

  /** Whether it was taken with exactly what is fitted and counts here. */
  public boolean belongs() {
    return changedSince.isEmpty() && reservations.isEmpty();
  }

  /** One of which neither target nor slope is known. */
  public Calibration(LocalDate asLeftOn, Outcome outcome, List<String> changedSince) {
    this(asLeftOn, outcome, changedSince, "", null);
  }

  /** What the record says of the curve. */
  public enum Outcome {
    CONFORMS,
    DOES_NOT_CONFORM,
    /** No curve could be taken, or none was judged. */
    NO_CURVE
  }
}
