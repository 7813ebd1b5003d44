package loopwright.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import loopwright.curve.CurveDrawing;
import loopwright.curve.CurvePoint;
import loopwright.curve.CurveResult;
import loopwright.curve.Finding;
import loopwright.curve.GapRange;
import loopwright.curve.Increment;
import loopwright.curve.RunResult;
import loopwright.curve.ToleranceProfile;
import loopwright.units.Numbers;
import loopwright.units.Unit;
import loopwright.web.UnitsShown;
import org.jspecify.annotations.Nullable;

/** A judged curve in words and rows, for pages. Rounded here and nowhere before. */
final class CurveResults {
  private final CurveResult result;
  private final UnitsShown units;
  private final Figures figures;

  private CurveResults(CurveResult result, UnitsShown units) {
    this.result = result;
    this.units = units;
    this.figures = new Figures(units);
  }

  /** A value with its name. */
  record Line(String name, String text) {}

  /** One reading. */
  record Row(
      String run,
      String gap,
      String volts,
      String isf,
      String isfVerdict,
      String deviation,
      String deviationVerdict) {}

  /** Everything a page shows. */
  record Shown(
      String verdict,
      String isfVerdict,
      String dslVerdict,
      String profile,
      String profileCode,
      List<Line> lines,
      List<String> findings,
      List<Row> rows,
      String plot,
      String gapUnit,
      String slopeUnit,
      @Nullable UncertaintyShown uncertainty) {

    Shown with(UncertaintyShown stated) {
      return new Shown(
          verdict,
          isfVerdict,
          dslVerdict,
          profile,
          profileCode,
          lines,
          findings,
          rows,
          plot,
          gapUnit,
          slopeUnit,
          stated);
    }
  }

  /**
   * @param id of the drawing on its page
   * @param zero words about where gap zero was taken; may be empty
   */
  static Shown of(CurveResult result, Unit gapUnit, UnitsShown units, String id, String zero) {
    return new CurveResults(result, units).shown(gapUnit, id, zero);
  }

  private Shown shown(Unit gapUnit, String id, String zero) {
    ToleranceProfile profile = result.profile();
    return new Shown(
        result.verdict().label(),
        result.isfVerdict().label(),
        result.dslVerdict().label(),
        profile.name()
            + ", version "
            + profile.version()
            + " · "
            + profile.source()
            + (profile.edition().isEmpty() ? "" : ", " + profile.edition()),
        profile.code(),
        lines(profile),
        result.findings().stream().map(Finding::sentence).toList(),
        rows(profile),
        CurveDrawing.svg(result, id, gapUnit, zero),
        units.metric() ? "µm" : "mil",
        units.metric() ? "mV/µm" : "mV/mil",
        null);
  }

  private List<Line> lines(ToleranceProfile profile) {
    List<Line> lines = new ArrayList<>();
    lines.add(new Line("Average scale factor (ASF)", figures.slopeBoth(result.asf())));
    lines.add(
        new Line(
            "Least squares slope",
            figures.slopeBoth(result.leastSquaresSlope())
                + ", standard error "
                + figures.error(result.leastSquaresSlopeStandardError())));
    result
        .worstIsfPercent()
        .ifPresent(
            percent ->
                lines.add(
                    new Line(
                        "Worst increment (ISF)",
                        Figures.percent(percent)
                            + " of nominal; limit ±"
                            + Numbers.plain(profile.isfTolerancePercent())
                            + " %")));
    lines.add(
        new Line(
            "Largest deviation (DSL)",
            figures.deviationBoth(result.maxDsl()) + "; limit ±" + profile.dslLimit()));
    result
        .hysteresis()
        .ifPresent(
            h ->
                lines.add(
                    new Line(
                        "Largest difference up to down", figures.deviationBoth(h.micrometres()))));
    lines.add(new Line("Linear range", result.linearRange().map(this::range).orElse("none")));
    lines.add(
        new Line(
            "Mid-range gap (guidance)",
            figures.gap(result.midRangeGapMicrometres()) + volts(result.midRangeVolts())));
    result
        .isfTrend()
        .ifPresent(
            trend ->
                lines.add(
                    new Line(
                        "ISF along the gap",
                        trend.direction().label()
                            + " ("
                            + Figures.percent(trend.changePercent())
                            + " over the range)")));
    return lines;
  }

  private String range(GapRange range) {
    return figures.gaps(range.fromMicrometres(), range.toMicrometres());
  }

  private static String volts(OptionalDouble volts) {
    return volts.isPresent() ? ", " + Figures.volts(volts.getAsDouble()) + " there" : "";
  }

  private List<Row> rows(ToleranceProfile profile) {
    List<Row> rows = new ArrayList<>();
    for (RunResult run : result.runs()) {
      for (CurvePoint point : run.points()) {
        rows.add(row(run, point, profile));
      }
    }
    return rows;
  }

  private Row row(RunResult run, CurvePoint point, ToleranceProfile profile) {
    String isfVerdict =
        run.increments().stream()
            .filter(step -> step.span().toMicrometres() == point.gapMicrometres())
            .findFirst()
            .map(CurveResults::verdict)
            .orElse("");
    boolean within = profile.dslConforms(point.deviationMicrometres());
    return new Row(
        run.run().label(),
        point.reading().gap().toString(),
        point.reading().output().toString(),
        point.isf().isPresent() ? figures.slopeNumber(point.isf().getAsDouble()) : "",
        isfVerdict,
        figures.deviationNumber(point.deviationMicrometres()),
        point.judged() ? (within ? "within" : "outside") : "drawn only");
  }

  private static String verdict(Increment step) {
    if (!step.judged()) {
      return "drawn only";
    }
    return step.conforms() ? "within" : "outside";
  }
}
