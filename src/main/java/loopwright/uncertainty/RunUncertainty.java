package loopwright.uncertainty;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.curve.CurvePoint;
import loopwright.curve.CurveResult;
import loopwright.curve.Increment;
import loopwright.curve.RunResult;
import loopwright.curve.ToleranceProfile;

/**
 * What one run's results are worth. The average scale factor is decided about by the profile's ISF
 * limits: an average of increments that all conform conforms as well.
 *
 * @param run the results
 * @param points one a reading, in the run's order
 * @param asf average scale factor
 * @param leastSquares slope; no limit applies to it
 * @param maxDsl largest deviation from the straight line
 * @param sharedExtremes readings that lie within U of the two that fix the line, these included:
 *     more than two mean that the budget of {@code maxDsl} is only a linearisation
 */
public record RunUncertainty(
    RunResult run,
    List<PointUncertainty> points,
    Statement asf,
    Budget leastSquares,
    Statement maxDsl,
    long sharedExtremes,
    List<ErrorSource> sources) {

  private static final EndToEnd ISF = new EndToEnd("incremental scale factor");
  private static final EndToEnd ASF = new EndToEnd("average scale factor");

  public RunUncertainty {
    points = List.copyOf(points);
    sources = List.copyOf(sources);
  }

  /**
   * @param isf of the increment from the reading before it; empty at the first
   * @param judged the decision about it; empty where ISF limits don't apply
   */
  public record PointUncertainty(
      CurvePoint point, Optional<Budget> isf, Optional<Statement> judged) {}

  static RunUncertainty of(
      CurveResult result, RunResult run, List<ErrorSource> sources, DecisionRule rule) {
    ToleranceProfile profile = result.profile();
    Limits band = new Limits(profile.isfLowest(), profile.isfHighest());
    Limits largest = Limits.atMost(profile.dslLimitMicrometres());
    Readings judged = judged(run);
    LargestDeviation deviation = deviation(profile);
    Budget dsl = Budget.of(deviation, judged, sources);
    return new RunUncertainty(
        run,
        points(run, sources, band, rule),
        new Statement(Budget.of(ASF, judged, sources), band, rule),
        Budget.of(new LeastSquaresSlope(), judged, sources),
        new Statement(dsl, largest, rule),
        deviation.contenders(judged, dsl.expandedUncertainty()),
        sources);
  }

  private static Readings judged(RunResult run) {
    return Readings.of(run.points().stream().filter(CurvePoint::judged).toList());
  }

  private static LargestDeviation deviation(ToleranceProfile profile) {
    return new LargestDeviation(profile.slope(), profile.shiftRule());
  }

  private static List<PointUncertainty> points(
      RunResult run, List<ErrorSource> sources, Limits band, DecisionRule rule) {
    Map<Double, Increment> judgedByEnd = new HashMap<>();
    run.judgedIncrements().forEach(step -> judgedByEnd.put(step.span().toMicrometres(), step));
    List<PointUncertainty> points = new ArrayList<>();
    for (int i = 0; i < run.points().size(); i++) {
      CurvePoint point = run.points().get(i);
      if (i == 0) {
        points.add(new PointUncertainty(point, Optional.empty(), Optional.empty()));
        continue;
      }
      CurvePoint before = run.points().get(i - 1);
      Budget budget = Budget.of(ISF, Readings.of(List.of(before, point)), sources);
      Optional<Statement> judged =
          Optional.ofNullable(judgedByEnd.get(point.gapMicrometres()))
              .filter(step -> step.span().fromMicrometres() == before.gapMicrometres())
              .map(step -> new Statement(budget, band, rule));
      points.add(new PointUncertainty(point, Optional.of(budget), judged));
    }
    return points;
  }

  /** The decisions about the judged increments. */
  public List<Statement> isf() {
    return points.stream().flatMap(point -> point.judged().stream()).toList();
  }

  /** The judged increment whose uncertainty is largest. */
  Optional<Statement> leastSureIsf() {
    return isf().stream().max((a, b) -> Double.compare(a.shareOfTolerance(), b.shareOfTolerance()));
  }

  /**
   * Redoes average scale factor, least-squares slope and largest deviation by chance.
   *
   * @param trials 10,000 or more give the first two digits
   * @param seed the same seed gives the same answer
   */
  public List<MonteCarlo> monteCarlo(CurveResult result, int trials, long seed) {
    Readings judged = judged(run);
    return Stream.of(ASF, new LeastSquaresSlope(), deviation(result.profile()))
        .map(measurand -> MonteCarlo.of(measurand, judged, sources, trials, seed))
        .toList();
  }
}
