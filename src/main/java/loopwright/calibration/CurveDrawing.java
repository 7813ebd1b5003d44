package loopwright.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import loopwright.curve.CurvePoint;
import loopwright.curve.CurveResult;
import loopwright.curve.Increment;
import loopwright.curve.Run;
import loopwright.curve.RunResult;
import loopwright.curve.ToleranceProfile;
import loopwright.print.CurvePicture;
import loopwright.print.CurvePlot;
import loopwright.units.Numbers;
import loopwright.units.Unit;

/** Draws a judged curve: three plots on one gap axis. */
final class CurveDrawing {
  private CurveDrawing() {}

  /**
   * @param id of the drawing on its page
   * @param zero words about where gap zero was taken; may be empty
   */
  static String svg(String id, CurveResult result, Unit gapUnit, String zero) {
    ToleranceProfile profile = result.profile();
    return CurvePlot.svg(
        new CurvePicture(
            id,
            label(result),
            result.runs().stream().map(run -> trace(run, profile)).toList(),
            line(result.worse(), profile),
            new CurvePicture.Band(profile.isfLowest(), profile.slope(), profile.isfHighest()),
            new CurvePicture.Band(-profile.dslLimitMicrometres(), 0, profile.dslLimitMicrometres()),
            words(profile, zero)),
        gapUnit);
  }

  private static String label(CurveResult result) {
    return "Voltage, incremental scale factor and deviation against gap; the curve %s by %s."
        .formatted(result.verdict().label(), result.profile().name());
  }

  private static CurvePicture.Words words(ToleranceProfile profile, String zero) {
    return new CurvePicture.Words(
        "line at " + profile.nominal(),
        "±" + Numbers.plain(profile.isfTolerancePercent()) + " %",
        "±" + profile.dslLimit(),
        zero);
  }

  /** From the first judged gap to the last. */
  private static CurvePicture.Line line(RunResult run, ToleranceProfile profile) {
    double from = run.judgedRange().fromMicrometres();
    double to = run.judgedRange().toMicrometres();
    return new CurvePicture.Line(from, volts(run, profile, from), to, volts(run, profile, to));
  }

  private static double volts(RunResult run, ToleranceProfile profile, double gapMicrometres) {
    return -profile.slope() * (gapMicrometres - run.zeroVoltsMicrometres()) / 1000;
  }

  private static CurvePicture.Trace trace(RunResult run, ToleranceProfile profile) {
    List<CurvePicture.Dot> dots = new ArrayList<>();
    for (CurvePoint point : run.points()) {
      dots.add(
          new CurvePicture.Dot(
              point.gapMicrometres(),
              point.volts(),
              point.deviationMicrometres(),
              standing(point.judged(), profile.dslConforms(point.deviationMicrometres()))));
    }
    return new CurvePicture.Trace(
        run.run().label().toLowerCase(Locale.ROOT),
        run.run() == Run.UP ? CurvePicture.Look.FIRST : CurvePicture.Look.SECOND,
        dots,
        run.increments().stream().map(CurveDrawing::step).toList());
  }

  private static CurvePicture.Step step(Increment increment) {
    return new CurvePicture.Step(
        increment.span().fromMicrometres(),
        increment.span().toMicrometres(),
        increment.isf(),
        standing(increment.judged(), increment.conforms()));
  }

  private static CurvePicture.Standing standing(boolean judged, boolean conforms) {
    if (!judged) {
      return CurvePicture.Standing.NOT_JUDGED;
    }
    return conforms ? CurvePicture.Standing.WITHIN : CurvePicture.Standing.OUTSIDE;
  }
}
