package loopwright.drift;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Stage;
import loopwright.drift.DriftSeries.Entry;
import loopwright.numerics.ParallelLines;
import loopwright.plant.SiteClocks;
import loopwright.print.StackPicture.Cut;
import loopwright.print.StackPicture.Pane;
import loopwright.trend.IntervalAdvice;
import loopwright.trend.Observation;
import loopwright.trend.Segment;
import loopwright.trend.Trend;
import loopwright.web.UnitsShown;
import org.jspecify.annotations.Nullable;

/** What the page of a loop's or a part's drift shows. */
record DriftShown(
    String title,
    String href,
    String drawing,
    List<SlopeLine> slopes,
    List<String> headings,
    List<Line> lines,
    @Nullable Advice advice,
    String checksSvg) {

  record Line(
      String href,
      String number,
      String day,
      String at,
      String stage,
      String verdict,
      List<String> figures,
      String marked) {}

  record SlopeLine(String figure, String sentence) {}

  record Advice(
      String present,
      String due,
      String suggested,
      List<IntervalAdvice.Reason> reasons,
      @Nullable String editHref) {}

  /** Whose drift it is. */
  record Whose(String title, String href) {}

  static DriftShown of(
      Whose whose,
      List<Entry> entries,
      List<Cut> exchanges,
      SiteClocks clocks,
      UnitsShown units,
      @Nullable Advice advice) {
    Map<Figure, Trend> trends = new EnumMap<>(Figure.class);
    for (Figure figure : Figure.values()) {
      trends.put(figure, DriftDrawing.trend(entries, figure, units));
    }
    List<Cut> cuts = new ArrayList<>(exchanges);
    cuts.addAll(adjustments(entries));
    return new DriftShown(
        whose.title(),
        whose.href(),
        DriftDrawing.svg(trends, cuts, whose.title(), units),
        slopes(trends, units),
        trends.keySet().stream().map(figure -> figure.title(units)).toList(),
        entries.stream().map(entry -> line(entry, trends, clocks, units)).toList(),
        advice,
        "");
  }

  /** The same with a drawing of the loop's readings and checks. */
  DriftShown with(List<Pane> panes, List<Cut> exchanges) {
    return new DriftShown(
        title,
        href,
        drawing,
        slopes,
        headings,
        lines,
        advice,
        DriftDrawing.svg(panes, exchanges, title));
  }

  /** As lefts that begin another level of the same parts. */
  private static List<Cut> adjustments(List<Entry> entries) {
    return DriftSeries.counted(entries).stream()
        .filter(entry -> entry.level() > 0 && entry.calibrated().stage() == Stage.AS_LEFT)
        .map(entry -> new Cut(Observation.years(entry.calibrated().measuredAt()), "left"))
        .toList();
  }

  private static List<SlopeLine> slopes(Map<Figure, Trend> trends, UnitsShown units) {
    List<SlopeLine> lines = new ArrayList<>();
    trends.forEach(
        (figure, trend) ->
            trend
                .latest()
                .ifPresent(
                    segment ->
                        segment
                            .line()
                            .ifPresent(
                                line ->
                                    lines.add(
                                        new SlopeLine(
                                            figure.title(units), slope(segment, line))))));
    return lines;
  }

  private static String slope(Segment segment, ParallelLines line) {
    int adjusted = line.levels().size() - 1;
    return "%s ± %s a year (95 %%); %s, from %s curves%s"
        .formatted(
            number(line.slope()),
            number(line.slopeHalfWidth(0.95)),
            segment.drifts()
                ? "it drifts"
                : "no drift can be told from chance (not significant at 5 %)",
            line.count(),
            adjusted == 0
                ? ""
                : ", each as found against the as left before it ("
                    + (adjusted == 1 ? "left anew once)" : "left anew " + adjusted + " times)"));
  }

  private static String number(double number) {
    return String.format(Locale.ROOT, "%.4f", number).replace('-', '\u2212');
  }

  private static Line line(
      Entry entry, Map<Figure, Trend> trends, SiteClocks clocks, UnitsShown units) {
    Calibrated curve = entry.calibrated();
    List<String> figures = new ArrayList<>();
    List<String> outliers = new ArrayList<>();
    trends.forEach(
        (figure, trend) -> {
          figures.add(
              figure.of(curve, units).isPresent()
                  ? String.format(Locale.ROOT, "%.3f", figure.of(curve, units).getAsDouble())
                      .replace('-', '\u2212')
                  : "");
          if (isOutlier(trend, DriftDrawing.observation(entry, figure, units))) {
            outliers.add(figure.title(units).replaceAll(",.*", "").toLowerCase(Locale.ROOT));
          }
        });
    return new Line(
        "/calibrations/" + curve.number(),
        curve.number(),
        clocks.shown(curve.measuredAt(), curve.point()),
        curve.tag() == null ? "bench" : curve.tag(),
        curve.stage().word(),
        curve.outcome(),
        figures,
        outliers.isEmpty() ? entry.why() : "outlier: " + String.join(", ", outliers));
  }

  private static boolean isOutlier(Trend trend, Optional<Observation> seen) {
    return seen.isPresent()
        && trend.segments().stream().anyMatch(segment -> segment.outliers().contains(seen.get()));
  }
}
