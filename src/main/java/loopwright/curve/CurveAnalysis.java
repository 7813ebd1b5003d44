package loopwright.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import loopwright.numerics.StraightLine;
import loopwright.problem.Refused;

/**
 * Judges a static curve by a profile.
 *
 * <ul>
 *   <li>ISF of an increment = (Vᵢ₋₁ − Vᵢ)/(gᵢ − gᵢ₋₁); limits apply to increments of the profile's
 *       width (see {@link Chain}).
 *   <li>ASF = the same end to end over the judged range.
 *   <li>DSL = deviation from the line of the profile's slope, shifted in voltage only.
 *   <li>Linear range = the longest run of increments that passes both tests with the line placed
 *       anew.
 * </ul>
 *
 * <p>Of the profile's grids the one is taken that the readings stand on best, whatever unit they
 * were typed in: 254, 508 … 2,286 µm is the inch grid. Basis: definitions as used with API Std 670
 * (from memory); the fixed slope of the DSL line likewise.
 */
public final class CurveAnalysis {
  /** Changes whenever the same readings could come out otherwise; kept with every record. */
  public static final String ANALYSIS_VERSION = "1";

  private final Curve curve;
  private final ToleranceProfile profile;
  private final Grid grid;

  private CurveAnalysis(Curve curve, ToleranceProfile profile, Grid grid) {
    this.curve = curve;
    this.profile = profile;
    this.grid = grid;
  }

  /**
   * Analyses every run and picks the worse.
   *
   * @throws Refused with {@link CurveProblem#OUTSIDE_RANGE} when a run has fewer than three
   *     readings inside the profile's range
   */
  public static CurveResult of(Curve curve, ToleranceProfile profile) {
    Grid grid =
        grid(curve, profile)
            .orElseThrow(
                () ->
                    new Refused(
                        CurveProblem.OUTSIDE_RANGE, profile.code(), profile.grids().get(0)));
    return new CurveAnalysis(curve, profile, grid).result();
  }

  /** The grid with most whole steps among those with enough readings in their range. */
  static Optional<Grid> grid(Curve curve, ToleranceProfile profile) {
    return profile.grids().stream()
        .filter(grid -> fits(curve, grid))
        .max(
            Comparator.<Grid>comparingInt(grid -> wholeSteps(curve, grid))
                .thenComparing(grid -> grid.unit() == curve.gapUnit()));
  }

  private static boolean fits(Curve curve, Grid grid) {
    return curve.runs().stream()
        .allMatch(run -> Chain.inside(gaps(curve.of(run)), grid) >= Curve.FEWEST);
  }

  private static int wholeSteps(Curve curve, Grid grid) {
    return curve.runs().stream()
        .mapToInt(run -> Chain.through(gaps(curve.of(run)), grid).wholeSteps())
        .sum();
  }

  private static double[] gaps(List<CurveReading> run) {
    return run.stream().mapToDouble(CurveReading::gapMicrometres).toArray();
  }

  private CurveResult result() {
    List<RunResult> runs = curve.runs().stream().map(this::judge).toList();
    Optional<Hysteresis> hysteresis =
        runs.size() < 2
            ? Optional.empty()
            : Hysteresis.between(runs.get(0).points(), runs.get(1).points(), profile.slope());
    CurveResult bare =
        new CurveResult(ANALYSIS_VERSION, profile, grid, runs, hysteresis, List.of());
    return new CurveResult(
        ANALYSIS_VERSION,
        profile,
        grid,
        runs,
        hysteresis,
        new CurveFindings(bare, new Say(curve.gapUnit())).all());
  }

  private RunResult judge(Run run) {
    List<CurveReading> readings = curve.of(run);
    double[] gaps = gaps(readings);
    double[] volts = readings.stream().mapToDouble(CurveReading::volts).toArray();
    Chain chain = Chain.through(gaps, grid);
    double[] judgedGaps = pick(gaps, chain.members());
    double[] judgedVolts = pick(volts, chain.members());
    PlacedLine line = PlacedLine.on(judgedGaps, judgedVolts, profile);
    StraightLine fit = StraightLine.fit(judgedGaps, judgedVolts);
    List<CurvePoint> points = points(readings, chain, line);
    List<Increment> steps = steps(chain, gaps, volts);
    List<Increment> judged = steps.stream().filter(Increment::judged).toList();
    int last = judgedGaps.length - 1;
    double maxDsl =
        points.stream()
            .filter(CurvePoint::judged)
            .mapToDouble(point -> Math.abs(point.deviationMicrometres()))
            .max()
            .orElseThrow();
    Optional<GapRange> linear =
        LinearStretch.in(pick(gaps, chain.beyond()), pick(volts, chain.beyond()), steps, profile);
    double middle = linear.orElse(profileRange()).middleMicrometres();
    return new RunResult(
        run,
        points,
        steps,
        chain.range(),
        chain.isComplete(),
        scaleFactor(judgedGaps, judgedVolts, 0, last),
        0.0 - 1000 * fit.slope(),
        1000 * fit.slopeStandardError(),
        line.shiftMicrometres(),
        maxDsl,
        linear,
        middle,
        Interpolated.volts(points, middle),
        IsfTrend.along(judged, profile.slope()),
        judged.isEmpty()
            ? Verdict.NOT_JUDGED
            : Verdict.of(judged.stream().allMatch(Increment::conforms)),
        Verdict.of(profile.dslConforms(maxDsl)));
  }

  private GapRange profileRange() {
    return new GapRange(grid.fromMicrometres(), grid.toMicrometres());
  }

  private List<CurvePoint> points(List<CurveReading> readings, Chain chain, PlacedLine line) {
    List<CurvePoint> points = new ArrayList<>();
    for (int i = 0; i < readings.size(); i++) {
      CurveReading reading = readings.get(i);
      OptionalDouble isf =
          i == 0
              ? OptionalDouble.empty()
              : OptionalDouble.of(scaleFactor(readings.get(i - 1), reading));
      points.add(
          new CurvePoint(
              reading,
              isf,
              line.deviation(reading.gapMicrometres(), reading.volts()),
              chain.members().contains(i)));
    }
    return points;
  }

  private List<Increment> steps(Chain chain, double[] gaps, double[] volts) {
    List<Increment> steps = new ArrayList<>();
    List<Integer> places = chain.beyond();
    for (int i = 1; i < places.size(); i++) {
      int from = places.get(i - 1);
      int to = places.get(i);
      double isf = scaleFactor(gaps, volts, from, to);
      boolean whole = chain.isWhole(from, to);
      boolean inside = chain.members().contains(from) && chain.members().contains(to);
      steps.add(
          new Increment(
              new GapRange(gaps[from], gaps[to]),
              isf,
              whole,
              whole && inside,
              profile.isfConforms(isf)));
    }
    return steps;
  }

  private static double scaleFactor(CurveReading before, CurveReading after) {
    return 1000
        * (before.volts() - after.volts())
        / (after.gapMicrometres() - before.gapMicrometres());
  }

  private static double scaleFactor(double[] gaps, double[] volts, int from, int to) {
    return 1000 * (volts[from] - volts[to]) / (gaps[to] - gaps[from]);
  }

  private static double[] pick(double[] values, List<Integer> places) {
    double[] picked = new double[places.size()];
    Arrays.setAll(picked, i -> values[places.get(i)]);
    return picked;
  }
}
