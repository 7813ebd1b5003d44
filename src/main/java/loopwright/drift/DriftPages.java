package loopwright.drift;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.Collectors;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Calibrations;
import loopwright.calibration.RegisteredProfiles;
import loopwright.calibration.Stage;
import loopwright.curve.ToleranceProfile;
import loopwright.db.Database;
import loopwright.loop.Configuration;
import loopwright.loop.DueLoops;
import loopwright.loop.LoopPanel;
import loopwright.loop.Need;
import loopwright.loop.Placed;
import loopwright.numerics.StraightLine;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.print.StackPicture.Cut;
import loopwright.register.Component;
import loopwright.register.ComponentId;
import loopwright.register.Register;
import loopwright.time.SiteMoment;
import loopwright.time.Viewpoint;
import loopwright.trend.IntervalAdvice;
import loopwright.trend.Observation;
import loopwright.trend.Segment;
import loopwright.trend.Trend;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Drift of a loop and of a part, what is due, and which interval the history suggests. */
public final class DriftPages implements Pages, LoopPanel, Need.Source {
  private static final int MOST = 400;
  private static final int DUE_LISTED = 300;
  private static final int SOON_DAYS = 90;

  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Register register;
  private final Configuration configuration;
  private final Calibrations calibrations;
  private final RegisteredProfiles profiles;
  private final DueLoops due;
  private final InstantSource clock;

  public DriftPages(
      Database database,
      Page page,
      Plant plant,
      Register register,
      Configuration configuration,
      Calibrations calibrations,
      RegisteredProfiles profiles,
      DueLoops due,
      InstantSource clock) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.register = register;
    this.configuration = configuration;
    this.calibrations = calibrations;
    this.profiles = profiles;
    this.due = due;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/loops/{tag}/drift", Permission.READ, this::loop);
    routes.get("/parts/{id}/drift", Permission.READ, this::part);
    routes.get("/due", Permission.READ, this::list);
  }

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

  record Shown(
      String title,
      String href,
      String drawing,
      List<SlopeLine> slopes,
      List<String> headings,
      List<Line> lines,
      @Nullable Advice advice) {}

  record DueLine(String tag, String href, String train, String due, String state) {}

  record Panel(String due, String href) {}

  private void loop(Context http) {
    UnitsShown units = UnitsShown.of(http);
    Shown shown =
        database.read(
            sql -> {
              Point point =
                  plant.pointTagged(sql, http.pathParam("tag")).orElseThrow(NotFoundResponse::new);
              ZoneId zone =
                  plant.place(sql, point.id()).orElseThrow(NotFoundResponse::new).site().zone();
              long number = point.id().number();
              List<Calibrated> curves =
                  curves(calibrations.ofLoop(sql, number, Optional.empty(), MOST));
              return shown(
                  point.tag(),
                  "/loops/" + PathSegment.of(point.tag()),
                  curves,
                  exchanges(sql, number, curves),
                  zone,
                  units,
                  advice(sql, point, curves));
            });
    page.show(http, "drift/drift", Map.of("drift", shown));
  }

  private void part(Context http) {
    String id = http.pathParam("id");
    if (!id.matches("\\d{1,18}")) {
      throw new NotFoundResponse();
    }
    Shown shown =
        database.read(
            sql -> {
              Component part =
                  register
                      .component(sql, new ComponentId(Long.parseLong(id)))
                      .orElseThrow(NotFoundResponse::new);
              List<Calibrated> curves =
                  curves(calibrations.ofComponent(sql, part.id().number(), MOST));
              return shown(
                  part.inWords(),
                  "/parts/" + id,
                  curves,
                  changes(curves),
                  ZoneOffset.UTC,
                  UnitsShown.of(http),
                  null);
            });
    page.show(http, "drift/drift", Map.of("drift", shown));
  }

  /** Those with a curve, oldest first. */
  private static List<Calibrated> curves(List<Calibrated> newestFirst) {
    List<Calibrated> curves =
        newestFirst.stream().filter(Calibrated::hasCurve).collect(Collectors.toList());
    Collections.reverse(curves);
    return curves;
  }

  private static Shown shown(
      String title,
      String href,
      List<Calibrated> curves,
      List<Cut> cuts,
      ZoneId zone,
      UnitsShown units,
      @Nullable Advice advice) {
    Map<Figure, Trend> trends = new EnumMap<>(Figure.class);
    for (Figure figure : Figure.values()) {
      trends.put(figure, DriftDrawing.trend(curves, figure, units));
    }
    return new Shown(
        title,
        href,
        DriftDrawing.svg(trends, cuts, title, units),
        slopes(trends, units),
        trends.keySet().stream().map(figure -> figure.title(units)).toList(),
        curves.stream().map(curve -> line(curve, trends, zone, units)).toList(),
        advice);
  }

  private static List<SlopeLine> slopes(Map<Figure, Trend> trends, UnitsShown units) {
    List<SlopeLine> lines = new ArrayList<>();
    trends.forEach(
        (figure, trend) ->
            trend
                .latest()
                .filter(segment -> segment.line().isPresent())
                .ifPresent(
                    segment -> lines.add(new SlopeLine(figure.title(units), slope(segment)))));
    return lines;
  }

  private static String slope(Segment segment) {
    StraightLine line = segment.line().orElseThrow();
    return "%s ± %s a year (95 %%); %s, from %s curves"
        .formatted(
            number(line.slope()),
            number(line.slopeHalfWidth(0.95)),
            segment.drifts()
                ? "it drifts"
                : "no drift can be told from chance (not significant at 5 %)",
            line.count());
  }

  private static String number(double number) {
    return String.format(Locale.ROOT, "%.4f", number).replace('-', '\u2212');
  }

  private static Line line(
      Calibrated curve, Map<Figure, Trend> trends, ZoneId zone, UnitsShown units) {
    List<String> figures = new ArrayList<>();
    List<String> marked = new ArrayList<>();
    trends.forEach(
        (figure, trend) -> {
          figures.add(
              figure.of(curve, units).isPresent()
                  ? String.format(Locale.ROOT, "%.3f", figure.of(curve, units).getAsDouble())
                      .replace('-', '\u2212')
                  : "");
          if (isOutlier(trend, figure, curve, units)) {
            marked.add(figure.title(units).replaceAll(",.*", "").toLowerCase(Locale.ROOT));
          }
        });
    return new Line(
        "/calibrations/" + curve.number(),
        curve.number(),
        SiteMoment.shown(curve.measuredAt(), zone),
        curve.tag() == null ? "bench" : curve.tag(),
        curve.stage().word(),
        curve.outcome(),
        figures,
        marked.isEmpty() ? "" : "outlier: " + String.join(", ", marked));
  }

  private static boolean isOutlier(Trend trend, Figure figure, Calibrated curve, UnitsShown units) {
    if (figure.of(curve, units).isEmpty()) {
      return false;
    }
    Observation seen =
        new Observation(
            curve.measuredAt(), figure.of(curve, units).getAsDouble(), curve.fingerprint());
    return trend.segments().stream().anyMatch(segment -> segment.outliers().contains(seen));
  }

  /** Moments between the curves at which a part of the loop was exchanged. */
  private List<Cut> exchanges(DSLContext sql, long point, List<Calibrated> curves) {
    if (curves.size() < 2) {
      return List.of();
    }
    Instant first = curves.get(0).measuredAt();
    Instant last = curves.get(curves.size() - 1).measuredAt();
    Map<Instant, List<String>> slots = new TreeMap<>();
    for (Placed placed : configuration.ofPoint(sql, point)) {
      Instant from = placed.span().from();
      if (from.isAfter(first) && from.isBefore(last)) {
        slots
            .computeIfAbsent(from, at -> new ArrayList<>())
            .add(placed.slot().isPath() ? "cable" : placed.slot().word());
      }
    }
    List<Cut> cuts = new ArrayList<>();
    slots.forEach(
        (at, words) ->
            cuts.add(
                new Cut(
                    Observation.years(at),
                    words.stream().distinct().collect(Collectors.joining(", ")))));
    return cuts;
  }

  /** Of a part: from which curve on it stood among other parts. */
  private static List<Cut> changes(List<Calibrated> curves) {
    List<Cut> cuts = new ArrayList<>();
    for (int i = 1; i < curves.size(); i++) {
      Calibrated now = curves.get(i);
      if (!now.fingerprint().equals(curves.get(i - 1).fingerprint())) {
        cuts.add(
            new Cut(Observation.years(now.measuredAt()), now.tag() == null ? "bench" : now.tag()));
      }
    }
    return cuts;
  }

  private Advice advice(DSLContext sql, Point point, List<Calibrated> curves) {
    Integer months = point.details().intervalMonths();
    String edit = "/points/" + point.id().number() + "/edit";
    String dueOn = due.of(sql, point.id().number()).map(LocalDate::toString).orElse("not known");
    if (months == null) {
      return new Advice("none is on record", dueOn, "", List.of(), edit);
    }
    IntervalAdvice advice =
        tolerance(sql, curves)
            .map(profile -> IntervalAdvice.of(known(months, curves, profile)))
            .orElse(
                new IntervalAdvice(
                    OptionalInt.empty(),
                    List.of(
                        new IntervalAdvice.Reason(
                            "all", "No curve is on record.", OptionalInt.empty()))));
    return new Advice(
        months + " months",
        dueOn,
        advice.months().isPresent() ? advice.months().getAsInt() + " months" : "",
        advice.reasons(),
        edit);
  }

  /** The profile that judged the newest curve. */
  private Optional<ToleranceProfile> tolerance(DSLContext sql, List<Calibrated> curves) {
    if (curves.isEmpty()) {
      return Optional.empty();
    }
    Calibrated newest = curves.get(curves.size() - 1);
    return calibrations
        .curve(sql, newest)
        .flatMap(curve -> profiles.judged(sql, newest, curve))
        .map(result -> result.profile());
  }

  private static IntervalAdvice.Known known(
      int months, List<Calibrated> curves, ToleranceProfile profile) {
    List<Boolean> within =
        curves.stream()
            .filter(curve -> curve.stage() != Stage.AS_LEFT)
            .map(curve -> curve.outcome().equals("conforms"))
            .toList();
    double tolerance = profile.slope() * profile.isfTolerancePercent().doubleValue() / 100;
    return new IntervalAdvice.Known(
        months,
        within,
        DriftDrawing.trend(curves, Figure.ASF, UnitsShown.METRIC).latest(),
        tolerance,
        profile.slope());
  }

  private void list(Context http) {
    String train = http.queryParam("train");
    Long number = train != null && train.matches("\\d{1,18}") ? Long.valueOf(train) : null;
    Map<String, Object> model = new HashMap<>();
    model.put(
        "lines",
        database.read(
            sql ->
                due.until(sql, clock.instant(), SOON_DAYS, number, DUE_LISTED).stream()
                    .map(DriftPages::line)
                    .toList()));
    model.put("days", SOON_DAYS);
    model.put("all", number != null);
    page.show(http, "drift/due", model);
  }

  private static DueLine line(DueLoops.Due loop) {
    return new DueLine(
        loop.tag(),
        "/loops/" + PathSegment.of(loop.tag()) + "/drift",
        loop.trainCode(),
        loop.dueOn().toString(),
        loop.overdue() ? "overdue" : "due soon");
  }

  /** One for each train with loops overdue, so that a neglected plant is no flood. */
  @Override
  public List<Need> needs(DSLContext sql, Instant now) {
    return due.overdueByTrain(sql, now).stream()
        .map(
            train ->
                new Need(
                    "attention",
                    4,
                    "/due?train=" + train.train(),
                    train.loops() == 1 ? "1 loop" : train.loops() + " loops",
                    train.trainCode() + ", " + train.site(),
                    train.train(),
                    "Calibration is overdue, since %s at the earliest.".formatted(train.oldest()),
                    train.oldest().atStartOfDay(ZoneOffset.UTC).toInstant(),
                    "planner",
                    "Plan them for the next stop."))
        .toList();
  }

  @Override
  public String template() {
    return "drift/panel";
  }

  @Override
  public Object model(DSLContext sql, Loop loop) {
    String href = "/loops/" + PathSegment.of(loop.tag()) + "/drift";
    String words =
        loop.viewpoint().equals(Viewpoint.LATEST)
            ? due.of(sql, loop.point())
                .map(
                    day ->
                        day.isBefore(SiteMoment.day(clock.instant(), loop.zone()))
                            ? "Calibration was due on " + day + "."
                            : "Calibration is due on " + day + ".")
                .orElse("No due date: there is no interval or no as-left on record.")
            : "";
    return new Panel(words, href);
  }

  @Override
  public List<Action> actions(Loop loop) {
    return List.of();
  }
}
