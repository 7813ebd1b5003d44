package loopwright.lengthlaw;

import java.time.LocalDate;
import loopwright.cause.Baseline;
import loopwright.cause.Observation;
import loopwright.cause.ProvedLength;
import loopwright.matching.Evidence;
import loopwright.units.Length;

/**
 * A confirmed wrong length about to be kept.
 *
 * @param tag of the loop; may be empty
 * @param knownBy how the true length is known; one that proves
 * @param gap µm, where the loop gave {@code before} when it was right
 * @param before V, when it was right
 * @param sensitivityBefore mV/µm, when it was right
 * @param volts V, with the true length fitted
 * @param sensitivity mV/µm, at the same gap and place
 * @param words who looked at what
 */
record Taught(
    LocalDate foundOn,
    String tag,
    Length system,
    Length fitted,
    Evidence knownBy,
    double gap,
    double before,
    double sensitivityBefore,
    double volts,
    double sensitivity,
    String words) {

  ProvedLength proved() {
    return new ProvedLength(
        system,
        fitted,
        Baseline.line(gap, before, sensitivityBefore),
        Observation.of(volts, sensitivity));
  }
}
