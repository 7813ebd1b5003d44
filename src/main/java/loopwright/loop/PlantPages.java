package loopwright.loop;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import loopwright.db.Database;
import loopwright.matching.PartView;
import loopwright.plant.MachineWalk;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.Site;
import loopwright.plant.Train;
import loopwright.plant.TrainId;
import loopwright.plant.TrainRow;
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
  private final InstantSource clock;
  private final StandingStore standings = new StandingStore();
  private final PlacementStore placements = new PlacementStore();

  public PlantPages(
      Database database, Page page, Plant plant, PartFacts parts, InstantSource clock) {
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
    UnitsShown units = UnitsShown.of(http);
    TrainPage shown = database.read(sql -> trainPage(sql, new TrainId(Long.parseLong(id)), units));
    page.show(http, "loop/train", Map.of("train", shown));
  }

  private TrainPage trainPage(DSLContext sql, TrainId id, UnitsShown units) {
    Train train = plant.train(sql, id).orElseThrow(NotFoundResponse::new);
    String site = plant.site(sql, train.site()).map(Site::name).orElse("");
    List<MachineWalk> walk = plant.walk(sql, id);
    List<Long> numbers =
        walk.stream().flatMap(m -> m.points().stream()).map(p -> p.id().number()).toList();
    Map<Long, Standing> byPoint =
        standings.of(sql, numbers).stream()
            .collect(Collectors.toMap(Standing::point, Function.identity()));
    Map<Long, List<Part>> fitted = fitted(sql, numbers);
    List<MachineBlock> machines = new ArrayList<>();
    for (MachineWalk machine : walk) {
      List<PointLine> lines =
          machine.points().stream()
              .map(
                  point ->
                      line(
                          point,
                          byPoint.get(point.id().number()),
                          fitted.getOrDefault(point.id().number(), List.of()),
                          units))
              .toList();
      machines.add(new MachineBlock(machine.machine().code(), machine.machine().name(), lines));
    }
    return new TrainPage(id.number(), train.code(), train.name(), site, machines);
  }

  private Map<Long, List<Part>> fitted(DSLContext sql, List<Long> points) {
    List<Placed> placed = placements.at(sql, points, clock.instant());
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
