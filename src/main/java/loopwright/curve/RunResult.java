package loopwright.curve;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One run, judged by itself. Slopes are in mV/µm and positive when the output gets more negative
 * with the gap; nothing is rounded.
 *
 * @param run which
 * @param points all readings by rising gap, judged or only drawn
 * @param increments the steps of the judged chain, and of its continuation past the range
 * @param judgedRange from the first judged reading to the last
 * @param complete whole increments from one end of the profile's range to the other
 * @param asf average scale factor, end to end over the judged range: (V₁ − Vₙ)/(gₙ − g₁)
 * @param leastSquaresSlope of the judged readings
 * @param leastSquaresSlopeStandardError of the same kind
 * @param zeroVoltsMicrometres where the placed line of the profile's slope reads 0 V
 * @param maxDsl largest deviation of a judged reading from that line, µm, as a magnitude
 * @param linearRange see {@link CurveAnalysis}; empty when no increment conforms
 * @param midRangeGapMicrometres middle of the linear range, else of the profile's range: guidance
 *     for setting a gap, not the point's approved gap
 * @param midRangeVolts interpolated there; empty when the readings don't reach it
 * @param isfTrend empty with fewer than three judged increments
 */
public record RunResult(
    Run run,
    List<CurvePoint> points,
    List<Increment> increments,
    GapRange judgedRange,
    boolean complete,
    double asf,
    double leastSquaresSlope,
    double leastSquaresSlopeStandardError,
    double zeroVoltsMicrometres,
    double maxDsl,
    Optional<GapRange> linearRange,
    double midRangeGapMicrometres,
    OptionalDouble midRangeVolts,
    Optional<IsfTrend> isfTrend,
    Verdict isfVerdict,
    Verdict dslVerdict) {

  public RunResult {
    points = List.copyOf(points);
    increments = List.copyOf(increments);
  }

  /** Both tests conform and the readings cover the profile's range. */
  public Verdict verdict() {
    return Verdict.of(complete && isfVerdict == Verdict.CONFORMS && dslVerdict == Verdict.CONFORMS);
  }

  /** The increments that ISF limits were applied to. */
  public List<Increment> judgedIncrements() {
    return increments.stream().filter(Increment::judged).toList();
  }

  /** The judged increment farthest from that slope. */
  Optional<Increment> worstIncrement(double nominal) {
    return judgedIncrements().stream()
        .max(Comparator.comparingDouble(step -> Math.abs(step.isf() - nominal)));
  }

  /** The judged reading farthest from the line. */
  CurvePoint worstPoint() {
    return points.stream()
        .filter(CurvePoint::judged)
        .max(Comparator.comparingDouble(point -> Math.abs(point.deviationMicrometres())))
        .orElseThrow();
  }
}
