package loopwright.gapround;

import java.util.Optional;
import loopwright.fieldcheck.GapReading;

/**
 * A reading of the round beside the one before it that compares with it: same machine state, same
 * place on the way, and the same warmth where both say.
 *
 * @param pair tag of the other probe of the pair; empty if none
 */
record Compared(String tag, String pair, GapReading now, Optional<GapReading> before) {

  /** V; less negative is positive. Empty without one before. */
  Optional<Double> change() {
    return before.map(earlier -> now.volts().canonical() - earlier.volts().canonical());
  }
}
