package loopwright.matching;

import java.time.LocalDate;
import java.util.List;

/**
 * The latest as-left calibration that concerns a loop.
 *
 * @param asLeftOn the day it was taken, in the site's zone
 * @param changedSince parts that are not the ones it was taken with, in words; empty when it
 *     belongs to exactly this combination
 */
public record Calibration(LocalDate asLeftOn, Outcome outcome, List<String> changedSince) {

  public Calibration {
    changedSince = List.copyOf(changedSince);
  }

  /** What the record says of the curve. */
  public enum Outcome {
    CONFORMS,
    DOES_NOT_CONFORM,
    /** No curve could be taken, or none was judged. */
    NO_CURVE
  }
}
