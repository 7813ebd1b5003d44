package loopwright.drift;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Calibrations;
import loopwright.calibration.RegisteredProfiles;
import loopwright.db.Database;
import loopwright.drift.DriftSeries.Entry;
import loopwright.fieldcheck.CheckTrends;
import loopwright.loop.Configuration;
import loopwright.loop.DueLoops;
import loopwright.loop.Placed;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.print.StackPicture.Cut;
import loopwright.register.Component;
import loopwright.register.ComponentId;
import loopwright.register.Register;
import loopwright.trend.Observation;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/** Drift of a loop and of a part, and which interval the history suggests. */
public final class DriftPages implements Pages {
  private static final int MOST = 400;

  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Register register;
  private final Configuration configuration;
  private final Calibrations calibrations;
  private final CheckTrends checks;
  private final IntervalBook intervals;

  public DriftPages(
      Database database,
      Page page,
      Plant plant,
      Register register,
      Configuration configuration,
      Calibrations calibrations,
      RegisteredProfiles profiles,
      DueLoops due,
      CheckTrends checks,
      InstantSource clock) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.register = register;
    this.configuration = configuration;
    this.calibrations = calibrations;
    this.checks = checks;
    this.intervals = new IntervalBook(calibrations, profiles, configuration, due, clock);
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/loops/{tag}/drift", Permission.READ, this::loop);
    routes.get("/parts/{id}/drift", Permission.READ, this::part);
  }

  private void loop(Context http) {
    UnitsShown units = UnitsShown.of(http);
    DriftShown shown = database.read(sql -> ofLoop(sql, http.pathParam("tag"), units));
    page.show(http, "drift/drift", Map.of("drift", shown));
  }

  private DriftShown ofLoop(DSLContext sql, String tag, UnitsShown units) {
    Point point = plant.pointTagged(sql, tag).orElseThrow(NotFoundResponse::new);
    long number = point.id().number();
    List<Calibrated> all = oldestFirst(calibrations.ofLoop(sql, number, Optional.empty(), MOST));
    List<Entry> entries = DriftSeries.of(all, calibrations.superseded(sql, all));
    List<Cut> exchanges = exchanges(sql, number);
    return DriftShown.of(
            new DriftShown.Whose(point.tag(), "/loops/" + PathSegment.of(point.tag())),
            entries,
            between(exchanges, all),
            plant.clocks(sql, List.of(number)),
            units,
            intervals.advice(sql, point, entries))
        .with(checks.panes(sql, number, units), exchanges);
  }

  private void part(Context http) {
    String id = http.pathParam("id");
    if (!id.matches("\\d{1,18}")) {
      throw new NotFoundResponse();
    }
    UnitsShown units = UnitsShown.of(http);
    DriftShown shown =
        database.read(sql -> ofPart(sql, new ComponentId(Long.parseLong(id)), units));
    page.show(http, "drift/drift", Map.of("drift", shown));
  }

  private DriftShown ofPart(DSLContext sql, ComponentId id, UnitsShown units) {
    Component part = register.component(sql, id).orElseThrow(NotFoundResponse::new);
    List<Calibrated> all = oldestFirst(calibrations.ofComponent(sql, id.number(), MOST));
    return DriftShown.of(
        new DriftShown.Whose(part.inWords(), "/parts/" + id.number()),
        DriftSeries.of(all, calibrations.superseded(sql, all)),
        changes(all),
        plant.clocks(sql, all.stream().map(Calibrated::point).filter(Objects::nonNull).toList()),
        units,
        null);
  }

  private static List<Calibrated> oldestFirst(List<Calibrated> newestFirst) {
    List<Calibrated> rising = new ArrayList<>(newestFirst);
    Collections.reverse(rising);
    return rising;
  }

  private static List<Cut> between(List<Cut> cuts, List<Calibrated> curves) {
    if (curves.size() < 2) {
      return List.of();
    }
    double first = Observation.years(curves.get(0).measuredAt());
    double last = Observation.years(curves.get(curves.size() - 1).measuredAt());
    return cuts.stream().filter(cut -> cut.x() > first && cut.x() < last).toList();
  }

  /** Moments at which a part of the loop was exchanged. */
  private List<Cut> exchanges(DSLContext sql, long point) {
    Map<Instant, List<String>> slots = new TreeMap<>();
    for (Placed placed : configuration.ofPoint(sql, point)) {
      slots
          .computeIfAbsent(placed.span().from(), at -> new ArrayList<>())
          .add(placed.slot().isPath() ? "cable" : placed.slot().word());
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
}
