package loopwright.drift;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import loopwright.calibration.Calibrated;
import loopwright.drift.DriftSeries.Entry;
import loopwright.print.StackPicture;
import loopwright.print.StackPicture.Cut;
import loopwright.print.StackPicture.Mark;
import loopwright.print.StackPicture.Pane;
import loopwright.print.StackPicture.Reach;
import loopwright.print.StackPicture.Spot;
import loopwright.print.StackPicture.Stroke;
import loopwright.print.StackPicture.Tick;
import loopwright.print.StackPicture.Trail;
import loopwright.print.StackPlot;
import loopwright.trend.Observation;
import loopwright.trend.Segment;
import loopwright.trend.Trend;
import loopwright.web.UnitsShown;

/** Figures over the years, each with its line and band, cut where a part was exchanged. */
final class DriftDrawing {
  private static final double CONFIDENCE = 0.95;
  private static final int STEPS = 24;

  private final Map<Figure, Trend> trends;
  private final List<Cut> cuts;
  private final UnitsShown units;

  private DriftDrawing(Map<Figure, Trend> trends, List<Cut> cuts, UnitsShown units) {
    this.trends = trends;
    this.cuts = cuts;
    this.units = units;
  }

  /**
   * @param cuts moments at which a part was exchanged, with its name
   */
  static String svg(Map<Figure, Trend> trends, List<Cut> cuts, String what, UnitsShown units) {
    Map<Figure, Trend> drawn = new EnumMap<>(trends);
    drawn.values().removeIf(Trend::isEmpty);
    return drawn.isEmpty() ? "" : StackPlot.svg(new DriftDrawing(drawn, cuts, units).picture(what));
  }

  static Trend trend(List<Entry> entries, Figure figure, UnitsShown units) {
    return Trend.of(
        DriftSeries.counted(entries).stream()
            .flatMap(entry -> observation(entry, figure, units).stream())
            .toList(),
        figure.least(units));
  }

  static Optional<Observation> observation(Entry entry, Figure figure, UnitsShown units) {
    Calibrated curve = entry.calibrated();
    OptionalDouble value = figure.of(curve, units);
    return value.isPresent()
        ? Optional.of(
            new Observation(
                curve.measuredAt(), value.getAsDouble(), curve.fingerprint(), entry.level()))
        : Optional.empty();
  }

  private StackPicture picture(String what) {
    List<Pane> panes = new ArrayList<>();
    trends.forEach((figure, trend) -> panes.add(pane(figure, trend)));
    return new StackPicture(
        "drift", "How " + what + " moved over the years.", "year", years(), cuts, panes);
  }

  private Pane pane(Figure figure, Trend trend) {
    List<List<Reach>> bands = new ArrayList<>();
    List<Trail> trails = new ArrayList<>();
    for (Segment segment : trend.segments()) {
      if (segment.line().isPresent()) {
        for (List<Observation> level : segment.byLevel()) {
          if (level.size() > 1) {
            bands.add(reaches(segment, level));
            trails.add(new Trail("line and its 95 % band", Stroke.LINE, ends(segment, level)));
          }
        }
      }
      List<Observation> outliers = segment.outliers();
      trails.add(new Trail("as calibrated", Stroke.NONE, spots(segment, outliers, false)));
      if (!outliers.isEmpty()) {
        trails.add(new Trail("outlier, not dropped", Stroke.NONE, spots(segment, outliers, true)));
      }
    }
    return new Pane(figure.title(units), words(trend), bands, trails);
  }

  private static List<Spot> spots(Segment segment, List<Observation> outliers, boolean ofOutliers) {
    return segment.observations().stream()
        .filter(one -> outliers.contains(one) == ofOutliers)
        .map(one -> new Spot(one.years(), one.value(), ofOutliers ? Mark.OUTSIDE : Mark.PLAIN))
        .toList();
  }

  private static String words(Trend trend) {
    return trend.segments().size() == 1
        ? "the same parts throughout"
        : trend.segments().size() + " sets of parts, each its own line";
  }

  private static List<Spot> ends(Segment segment, List<Observation> level) {
    return List.of(level.get(0), level.get(level.size() - 1)).stream()
        .map(one -> Spot.of(one.years(), segment.lineAt(one.years(), one)))
        .toList();
  }

  private static List<Reach> reaches(Segment segment, List<Observation> level) {
    Observation first = level.get(0);
    double from = first.years();
    double to = level.get(level.size() - 1).years();
    return IntStream.rangeClosed(0, STEPS)
        .mapToDouble(i -> from + (to - from) * i / STEPS)
        .mapToObj(
            x -> {
              double middle = segment.lineAt(x, first);
              double half = segment.halfWidthAt(x, first, CONFIDENCE);
              return new Reach(x, middle - half, middle + half);
            })
        .toList();
  }

  /** Other figures of the loop, drawn the same way; empty where there are none. */
  static String svg(List<Pane> panes, List<Cut> cuts, String what) {
    if (panes.isEmpty()) {
      return "";
    }
    List<Double> years =
        panes.stream()
            .flatMap(pane -> pane.trails().stream())
            .flatMap(trail -> trail.spots().stream())
            .map(Spot::x)
            .sorted()
            .toList();
    double first = years.get(0);
    double last = years.get(years.size() - 1);
    return StackPlot.svg(
        new StackPicture(
            "checks",
            "Readings and checks of " + what + " over the years.",
            "year",
            ticks(year(first), year(last) + 1),
            cuts.stream().filter(cut -> cut.x() >= first && cut.x() <= last).toList(),
            panes));
  }

  private static int year(double years) {
    return Observation.at(years).atZone(ZoneOffset.UTC).getYear();
  }

  /** A year's beginning each, or every few where there are many. */
  private List<Tick> years() {
    List<Instant> moments =
        trends.values().stream()
            .flatMap(trend -> trend.segments().stream())
            .flatMap(segment -> segment.observations().stream())
            .map(Observation::at)
            .sorted(Comparator.naturalOrder())
            .toList();
    int first = moments.get(0).atZone(ZoneOffset.UTC).getYear();
    int last = moments.get(moments.size() - 1).atZone(ZoneOffset.UTC).getYear() + 1;
    return ticks(first, last);
  }

  private static List<Tick> ticks(int first, int last) {
    int step = Math.max(1, (last - first) / 12);
    return IntStream.rangeClosed(first, last)
        .filter(year -> (year - first) % step == 0)
        .mapToObj(
            year ->
                new Tick(
                    Observation.years(
                        LocalDate.of(year, 1, 1).atStartOfDay(ZoneOffset.UTC).toInstant()),
                    Integer.toString(year)))
        .toList();
  }
}
