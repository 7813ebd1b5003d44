package loopwright.whatif;

import java.util.Optional;
import loopwright.calibration.Calibrated;
import loopwright.cause.Baseline;
import loopwright.curve.Curve;
import loopwright.protection.GapSpan;

/**
 * The curve from which an outlook starts: the loop's last good one, else its family's line.
 *
 * @param words what it is
 * @param known gaps that it answers for
 * @param record the curve that is kept; empty for a line
 */
record Present(Baseline baseline, String words, GapSpan known, Optional<Record> record) {

  /** A kept curve. */
  record Record(Calibrated calibrated, Curve curve) {}

  double setGap() {
    return baseline.setGapMicrometres();
  }
}
