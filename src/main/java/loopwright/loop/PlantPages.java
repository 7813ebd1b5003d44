package loopwright.loop;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import loopwright.db.Database;
import loopwright.journal.Looking;
import loopwright.matching.PartView;
import loopwright.plant.MachineWalk;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.Site;
import loopwright.plant.Train;
import loopwright.plant.TrainId;
import loopwright.plant.TrainRow;
import loopwright.time.Viewpoint;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** The plant as an indented list: sites, trains, the points along a train. */
public final class PlantPages implements Pages {
  private static final List<String> ORDER = List.of("refused", "unknown", "attention", "matches");

  private final Database database;
  private final Page page;
  private final Plant plant;
  private final PartFacts parts;
  private final Judging judging;
  private final InstantSource clock;
  private final StandingStore standings = new StandingStore();
  private final PlacementStore placements = new PlacementStore();

  public PlantPages(
      Database database,
      Page page,
      Plant plant,
      PartFacts parts,
      Judging judging,
      InstantSource clock) {
    this.judging = judging;
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.parts = parts;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/plant", Permission.READ, this::plant);
    routes.get("/plant/trains/{id}", Permission.READ, this::train);
  }

  record VerdictCount(String verdict, int count) {}

  record TrainLine(long id, String code, String name, int loops, List<VerdictCount> counts) {}

  record SiteBlock(long id, String name, String zone, boolean adopting, List<TrainLine> trains) {}

  record Part(long id, String label) {}

  record PointLine(
      String href,
      String tag,
      String kind,
      String place,
      String verdict,
      String headline,
      String balance,
      List<Part> parts) {}

  record MachineBlock(String code, String name, List<PointLine> points) {}

  record TrainPage(long id, String code, String name, String site, List<MachineBlock> machines) {}

  private void plant(Context http) {
    List<SiteBlock> sites =
        database.read(sql -> plant.sites(sql).stream().map(site -> block(sql, site)).toList());
    page.show(http, "loop/plant", Map.of("sites", sites));
  }

  private SiteBlock block(DSLContext sql, Site site) {
    List<TrainLine> trains =
        plant.trains(sql, site.id()).stream().map(row -> line(sql, row)).toList();
    return new SiteBlock(
        site.id().number(), site.name(), site.zone().getId(), site.details().adopting(), trains);
  }

  private TrainLine line(DSLContext sql, TrainRow row) {
    Train train = row.train();
    Map<String, Integer> counts = standings.counts(sql, StandingStore.inTrain(train.id().number()));
    List<VerdictCount> inOrder =
        ORDER.stream()
            .filter(counts::containsKey)
            .map(word -> new VerdictCount(word, counts.getOrDefault(word, 0)))
            .toList();
    return new TrainLine(train.id().number(), train.code(), train.name(), row.points(), inOrder);
  }

  private void train(Context http) {
    String id = http.pathParam("id");
    if (!id.matches("\\d{1,18}")) {
      throw new NotFoundResponse();
    }
    Map<String, Object> model = new HashMap<>();
    TrainId train = new TrainId(Long.parseLong(id));
    Looking look = database.read(sql -> fill(sql, http, train, model));
    page.show(http, look.status(), "loop/train", model);
  }

  private Looking fill(DSLContext sql, Context http, TrainId id, Map<String, Object> model) {
    Train train = plant.train(sql, id).orElseThrow(NotFoundResponse::new);
    Site site = plant.site(sql, train.site()).orElseThrow(NotFoundResponse::new);
    Looking look = Looking.of(http, sql, site.zone(), clock.instant());
    UnitsShown units = UnitsShown.of(http);
    List<MachineWalk> walk = plant.walk(sql, id);
    Function<Point, PointLine> lines =
        look.past() ? then(sql, walk, look.viewpoint(), units) : now(sql, walk, units);
    List<MachineBlock> machines = new ArrayList<>();
    for (MachineWalk machine : walk) {
      machines.add(
          new MachineBlock(
              machine.machine().code(),
              machine.machine().name(),
              machine.points().stream().map(lines).toList()));
    }
    model.put("look", look);
    model.put("here", "/plant/trains/" + id.number());
    model.put(
        "train", new TrainPage(id.number(), train.code(), train.name(), site.name(), machines));
    return look;
  }

  private static List<Point> points(List<MachineWalk> walk) {
    return walk.stream().flatMap(machine -> machine.points().stream()).toList();
  }

  /** As the loops stand now, out of the table that keeps it. */
  private Function<Point, PointLine> now(DSLContext sql, List<MachineWalk> walk, UnitsShown units) {
    List<Long> numbers = points(walk).stream().map(point -> point.id().number()).toList();
    Map<Long, Standing> byPoint =
        standings.of(sql, numbers).stream()
            .collect(Collectors.toMap(Standing::point, Function.identity()));
    Map<Long, List<Part>> fitted = fitted(sql, placements.at(sql, numbers, clock.instant()));
    return point ->
        line(
            point,
            byPoint.get(point.id().number()),
            fitted.getOrDefault(point.id().number(), List.of()),
            units);
  }

  /** As the loops were, judged for this page. */
  private Function<Point, PointLine> then(
      DSLContext sql, List<MachineWalk> walk, Viewpoint viewpoint, UnitsShown units) {
    List<Judging.Subject> subjects =
        points(walk).stream()
            .map(point -> new Judging.Subject(point.id().number(), point.tag()))
            .toList();
    Map<Long, Judging.Judged> judged =
        judging.judge(sql, subjects, viewpoint).stream()
            .collect(Collectors.toMap(one -> one.subject().point(), Function.identity()));
    List<Placed> placed = judged.values().stream().flatMap(one -> one.chain().stream()).toList();
    Map<Long, List<Part>> fitted = fitted(sql, placed);
    return point -> {
      long number = point.id().number();
      Judging.Judged one = Objects.requireNonNull(judged.get(number));
      return line(point, one, fitted.getOrDefault(number, List.of()), units);
    };
  }

  private static PointLine line(
      Point point, Judging.Judged judged, List<Part> fitted, UnitsShown units) {
    return new PointLine(
        "/loops/" + PathSegment.of(point.tag()),
        point.tag(),
        point.kind().word(),
        point.details().place(),
        judged.judgement().verdict().word(),
        Headline.of(judged.judgement()),
        Shown.balance(judged.judgement().balance(), units),
        fitted);
  }

  private Map<Long, List<Part>> fitted(DSLContext sql, List<Placed> placed) {
    List<Long> components =
        placed.stream().flatMap(p -> p.content().component().stream().boxed()).toList();
    Map<Long, PartView> views = parts.parts(sql, components);
    return placed.stream()
        .filter(p -> p.content() instanceof Content.Part)
        .collect(
            Collectors.groupingBy(
                Placed::point,
                Collectors.mapping(
                    p -> part((Content.Part) p.content(), views), Collectors.toList())));
  }

  private static Part part(Content.Part part, Map<Long, PartView> views) {
    PartView view = views.get(part.number());
    return new Part(part.number(), view == null ? "?" : view.name().text());
  }

  private static PointLine line(
      Point point, @Nullable Standing standing, List<Part> fitted, UnitsShown units) {
    return new PointLine(
        "/loops/" + PathSegment.of(point.tag()),
        point.tag(),
        point.kind().word() + (point.inUse() ? "" : ", retired"),
        point.details().place(),
        standing == null ? "unknown" : standing.verdict(),
        standing == null ? "Not judged yet." : standing.headline(),
        standing == null ? "" : Shown.balance(standing.balance(), units),
        fitted);
  }
}
