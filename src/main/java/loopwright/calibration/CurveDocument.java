package loopwright.calibration;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import loopwright.curve.CurvePoint;
import loopwright.curve.CurveResult;
import loopwright.curve.Finding;
import loopwright.curve.GapRange;
import loopwright.curve.Hysteresis;
import loopwright.curve.IsfTrend;
import loopwright.curve.RunResult;
import loopwright.uncertainty.CurveUncertainty;
import org.jspecify.annotations.Nullable;

/**
 * The JSON of {@code analyse --json} and {@code /api/analyse}. Slopes in mV/µm, positive; gaps and
 * deviations in µm; voltages in V, negative; with two runs the top-level values are the worse
 * run's.
 *
 * @param isfTrend {@code falls}, {@code rises}, {@code no trend}; null with fewer than three
 *     increments
 * @param isfTrendSlope mV/µm per mm
 * @param isfTrendSignificance probability of such a slope if there were none
 */
public record CurveDocument(
    String profile,
    int profileVersion,
    String analysisVersion,
    String grid,
    List<Point> points,
    double asf,
    double leastSquaresSlope,
    double leastSquaresSlopeStandardError,
    double maxDsl,
    @Nullable Range linearRange,
    double midRangeGapMicrometres,
    @Nullable Double midRangeVolts,
    @Nullable String isfTrend,
    @Nullable Double isfTrendSlope,
    @Nullable Double isfTrendSignificance,
    String isfVerdict,
    String dslVerdict,
    String verdict,
    @Nullable Double hysteresisMicrometres,
    List<RunValues> runs,
    List<String> findings,
    @JsonUnwrapped @Nullable UncertaintyFields uncertainty) {

  /** One reading. */
  public record Point(
      double gapMicrometres,
      double volts,
      @Nullable Double isf,
      double deviationMicrometres,
      String run,
      boolean judged,
      @JsonUnwrapped UncertaintyFields.@Nullable OfPoint uncertainty) {

    static Point of(CurvePoint point, UncertaintyFields.@Nullable OfPoint uncertainty) {
      return new Point(
          point.gapMicrometres(),
          point.volts(),
          orNull(point.isf()),
          point.deviationMicrometres(),
          point.run().label(),
          point.judged(),
          uncertainty);
    }
  }

  /** A stretch of gaps. */
  public record Range(double fromMicrometres, double toMicrometres) {

    static @Nullable Range of(@Nullable GapRange range) {
      return range == null ? null : new Range(range.fromMicrometres(), range.toMicrometres());
    }
  }

  /** What one run came to by itself. */
  public record RunValues(
      String run,
      double asf,
      double leastSquaresSlope,
      double maxDsl,
      @Nullable Range linearRange,
      String isfVerdict,
      String dslVerdict,
      String verdict) {

    static RunValues of(RunResult run) {
      return new RunValues(
          run.run().label(),
          run.asf(),
          run.leastSquaresSlope(),
          run.maxDsl(),
          Range.of(run.linearRange().orElse(null)),
          run.isfVerdict().label(),
          run.dslVerdict().label(),
          run.verdict().label());
    }
  }

  /**
   * @param asked what would be asked back on a page; a file can't answer, so it stands among the
   *     findings
   * @param uncertainty adds its fields when equipment was named
   */
  public static CurveDocument of(
      CurveResult result,
      List<String> asked,
      Optional<CurveUncertainty> uncertainty,
      List<String> remarks) {
    IsfTrend trend = result.isfTrend().orElse(null);
    Hysteresis hysteresis = result.hysteresis().orElse(null);
    List<String> findings = new ArrayList<>(asked);
    result.findings().stream().map(Finding::sentence).forEach(findings::add);
    return new CurveDocument(
        result.profile().code(),
        result.profile().version(),
        result.analysisVersion(),
        result.grid().toString(),
        points(result, uncertainty),
        result.asf(),
        result.leastSquaresSlope(),
        result.leastSquaresSlopeStandardError(),
        result.maxDsl(),
        Range.of(result.linearRange().orElse(null)),
        result.midRangeGapMicrometres(),
        orNull(result.midRangeVolts()),
        trend == null ? null : trend.direction().label(),
        trend == null ? null : trend.slope(),
        trend == null ? null : trend.significance(),
        result.isfVerdict().label(),
        result.dslVerdict().label(),
        result.verdict().label(),
        hysteresis == null ? null : hysteresis.micrometres(),
        result.runs().stream().map(RunValues::of).toList(),
        findings,
        uncertainty.map(known -> UncertaintyFields.of(known, remarks)).orElse(null));
  }

  private static List<Point> points(CurveResult result, Optional<CurveUncertainty> uncertainty) {
    if (uncertainty.isEmpty()) {
      return result.points().stream().map(point -> Point.of(point, null)).toList();
    }
    return uncertainty.get().runs().stream()
        .flatMap(run -> run.points().stream())
        .map(point -> Point.of(point.point(), UncertaintyFields.OfPoint.of(point)))
        .toList();
  }

  private static @Nullable Double orNull(OptionalDouble number) {
    return number.isPresent() ? number.getAsDouble() : null;
  }
}
