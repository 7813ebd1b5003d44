package loopwright.curve;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What an analysis made of a curve. With two runs the values at this level are the worse run's.
 *
 * @param analysisVersion of the method, {@link CurveAnalysis#ANALYSIS_VERSION}
 * @param profile that judged it
 * @param grid of the profile that the readings stand on
 * @param runs one or two, up first
 * @param hysteresis between two runs
 * @param findings most important first
 */
public record CurveResult(
    String analysisVersion,
    ToleranceProfile profile,
    Grid grid,
    List<RunResult> runs,
    Optional<Hysteresis> hysteresis,
    List<Finding> findings) {

  public CurveResult {
    runs = List.copyOf(runs);
    findings = List.copyOf(findings);
  }

  /** Conforms when every run does. */
  public Verdict verdict() {
    return worse().verdict();
  }

  /**
   * The run that counts: one that doesn't conform before one that does, then the one that uses up
   * more of its tightest limit; of equals the first.
   */
  public RunResult worse() {
    return runs.stream().min(Comparator.comparingDouble(run -> -badness(run))).orElseThrow();
  }

  private double badness(RunResult run) {
    double half = profile.isfHighest() - profile.slope();
    double isf =
        run.worstIncrement(profile.slope())
            .map(step -> Math.abs(step.isf() - profile.slope()) / half)
            .orElse(0.0);
    double dsl = run.maxDsl() / profile.dslLimitMicrometres();
    double failed = run.verdict() == Verdict.CONFORMS ? 0 : 1e9;
    return failed + Math.min(Math.max(isf, dsl), 1e8);
  }

  /** Every reading, the up run first, by rising gap. */
  public List<CurvePoint> points() {
    return runs.stream().flatMap(run -> run.points().stream()).toList();
  }

  public Verdict isfVerdict() {
    return worse().isfVerdict();
  }

  public Verdict dslVerdict() {
    return worse().dslVerdict();
  }

  /** mV/µm. */
  public double asf() {
    return worse().asf();
  }

  /** mV/µm, positive. */
  public double leastSquaresSlope() {
    return worse().leastSquaresSlope();
  }

  /** mV/µm. */
  public double leastSquaresSlopeStandardError() {
    return worse().leastSquaresSlopeStandardError();
  }

  /** µm. */
  public double maxDsl() {
    return worse().maxDsl();
  }

  /** Departure of the worst judged increment from nominal, percent with its sign. */
  public OptionalDouble worstIsfPercent() {
    return worse().worstIncrement(profile.slope()).stream()
        .mapToDouble(step -> step.percentFrom(profile.slope()))
        .findFirst();
  }

  public Optional<GapRange> linearRange() {
    return worse().linearRange();
  }

  public double midRangeGapMicrometres() {
    return worse().midRangeGapMicrometres();
  }

  public OptionalDouble midRangeVolts() {
    return worse().midRangeVolts();
  }

  public Optional<IsfTrend> isfTrend() {
    return worse().isfTrend();
  }
}
