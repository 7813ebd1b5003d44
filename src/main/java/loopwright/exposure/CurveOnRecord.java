package loopwright.exposure;

import java.util.Optional;
import loopwright.calibration.Calibrated;
import loopwright.cause.GivenCurve;
import loopwright.curve.Curve;
import loopwright.curve.CurveResult;
import loopwright.protection.GapSpan;
import loopwright.protection.OutputCurve;

/**
 * A curve that is kept, as the arithmetic of set points takes it; of an up and a down run the mean.
 *
 * @param result as it was judged then
 */
record CurveOnRecord(Calibrated calibrated, Curve curve, Optional<CurveResult> result) {

  /** Its falling part about a gap; empty where it doesn't fall there. */
  Optional<OutputCurve> output(double gap) {
    GivenCurve given = GivenCurve.of("curve " + calibrated.number(), curve);
    return OutputCurve.falling(given.gaps(), given.volts(), gap, straight());
  }

  private Optional<GapSpan> straight() {
    return result
        .flatMap(CurveResult::linearRange)
        .map(range -> new GapSpan(range.fromMicrometres(), range.toMicrometres()));
  }

  double middle() {
    double[] gaps = GivenCurve.of("curve", curve).gaps();
    return result
        .map(CurveResult::midRangeGapMicrometres)
        .orElse((gaps[0] + gaps[gaps.length - 1]) / 2);
  }

  boolean reaches(double gap) {
    double[] gaps = GivenCurve.of("curve", curve).gaps();
    return gap >= gaps[0] && gap <= gaps[gaps.length - 1];
  }

  /** Whether its gaps count from a voltage, so that two such curves can't be told apart by it. */
  boolean fromElectricalZero() {
    return calibrated.zero().equals("electrical zero");
  }
}
