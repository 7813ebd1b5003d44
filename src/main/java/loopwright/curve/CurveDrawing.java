package loopwright.curve;

import java.util.ArrayList;
import java.util.List;
import loopwright.print.CurvePicture;
import loopwright.print.CurvePicture.Dot;
import loopwright.print.CurvePicture.Line;
import loopwright.print.CurvePicture.Look;
import loopwright.print.CurvePicture.Standing;
import loopwright.print.CurvePicture.Step;
import loopwright.print.CurvePicture.Trace;
import loopwright.print.CurvePlot;
import loopwright.units.Numbers;
import loopwright.units.Unit;

/** A result as its three plots. The line is that of the worse run. */
public final class CurveDrawing {
  private final CurveResult result;
  private final ToleranceProfile profile;
  private final Unit gapUnit;

  private CurveDrawing(CurveResult result, Unit gapUnit) {
    this.result = result;
    this.profile = result.profile();
    this.gapUnit = gapUnit;
  }

  /**
   * The plots as SVG for a page.
   *
   * @param id distinguishes this drawing from others on the page: letters, digits, hyphens
   * @param gapUnit µm or mil, as the reader prefers
   * @param gapNote said after the gap axis, for instance which zero was used; may be empty
   */
  public static String svg(CurveResult result, String id, Unit gapUnit, String gapNote) {
    CurvePicture picture = new CurveDrawing(result, gapUnit).picture(id, gapNote);
    return CurvePlot.svg(picture, gapUnit);
  }

  private CurvePicture picture(String id, String gapNote) {
    double slope = profile.slope();
    double limit = profile.dslLimitMicrometres();
    Say say = new Say(gapUnit);
    String percent = Numbers.plain(profile.isfTolerancePercent()) + " %";
    return new CurvePicture(
        id,
        label(),
        result.runs().stream().map(this::trace).toList(),
        line(),
        new CurvePicture.Band(profile.isfLowest(), slope, profile.isfHighest()),
        new CurvePicture.Band(-limit, 0, limit),
        new CurvePicture.Words(
            say.scaleFactor(slope) + ", placed for " + profile.shiftRule().label(),
            "band: " + say.scaleFactor(slope) + " ±" + percent,
            "band: ±" + say.gap(limit) + ", positive reads closer",
            gapNote));
  }

  private String label() {
    return "Output, incremental scale factor and deviation against gap: the curve "
        + result.verdict().label()
        + " to "
        + profile.code()
        + ".";
  }

  private Trace trace(RunResult run) {
    List<Dot> dots =
        run.points().stream()
            .map(
                point ->
                    new Dot(
                        point.gapMicrometres(),
                        point.volts(),
                        point.deviationMicrometres(),
                        standing(
                            point.judged(), profile.dslConforms(point.deviationMicrometres()))))
            .toList();
    Look look = run.run() == Run.UP ? Look.FIRST : Look.SECOND;
    return new Trace(run.run().label() + " run", look, dots, steps(run));
  }

  /** The judged increments, and the steps between readings that belong to none of them. */
  private List<Step> steps(RunResult run) {
    List<Step> steps = new ArrayList<>();
    for (Increment step : run.increments()) {
      steps.add(step(step.span(), step.isf(), standing(step.judged(), step.conforms())));
    }
    for (int i = 1; i < run.points().size(); i++) {
      GapRange span =
          new GapRange(
              run.points().get(i - 1).gapMicrometres(), run.points().get(i).gapMicrometres());
      boolean shown = run.increments().stream().anyMatch(step -> step.span().equals(span));
      if (!shown) {
        steps.add(step(span, run.points().get(i).isf().orElseThrow(), Standing.NOT_JUDGED));
      }
    }
    return steps;
  }

  private static Step step(GapRange span, double isf, Standing standing) {
    return new Step(span.fromMicrometres(), span.toMicrometres(), isf, standing);
  }

  private static Standing standing(boolean judged, boolean conforms) {
    if (!judged) {
      return Standing.NOT_JUDGED;
    }
    return conforms ? Standing.WITHIN : Standing.OUTSIDE;
  }

  private Line line() {
    RunResult worse = result.worse();
    PlacedLine line = new PlacedLine(profile.slope(), worse.zeroVoltsMicrometres());
    GapRange range = worse.judgedRange();
    return new Line(
        range.fromMicrometres(),
        line.volts(range.fromMicrometres()),
        range.toMicrometres(),
        line.volts(range.toMicrometres()));
  }
}
