package loopwright.past;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.db.Database;
import loopwright.journal.Looking;
import loopwright.loop.Content;
import loopwright.loop.PartFacts;
import loopwright.loop.PlacementHistory;
import loopwright.loop.PlacementHistory.Belief;
import loopwright.loop.Slot;
import loopwright.loop.StayWords;
import loopwright.loop.Words;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.PointPlace;
import loopwright.plant.Site;
import loopwright.plant.SiteId;
import loopwright.plant.Train;
import loopwright.plant.TrainId;
import loopwright.problem.Text;
import loopwright.time.SiteMoment;
import loopwright.time.Span;
import loopwright.time.Viewpoint;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/**
 * What was exchanged between two moments on a loop, a train or a site, by which change, by whom.
 */
public final class DifferencePages implements Pages {
  private static final Looking.Fields FIRST = new Looking.Fields("at", "known");
  private static final Looking.Fields SECOND = new Looking.Fields("at2", "known2");

  /** So many loops are told on one page. */
  private static final int MOST = 300;

  private final Database database;
  private final Page page;
  private final Plant plant;
  private final PartFacts parts;
  private final InstantSource clock;
  private final PlacementHistory history = new PlacementHistory();

  public DifferencePages(
      Database database, Page page, Plant plant, PartFacts parts, InstantSource clock) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.parts = parts;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get(
        "/loops/{tag}/differences", Permission.READ, http -> show(http, sql -> loop(sql, http)));
    routes.get(
        "/plant/trains/{id}/differences",
        Permission.READ,
        http -> show(http, sql -> train(sql, new TrainId(number(http)))));
    routes.get(
        "/plant/sites/{id}/differences",
        Permission.READ,
        http -> show(http, sql -> site(sql, new SiteId(number(http)))));
  }

  private interface Finding {
    Scope in(DSLContext sql);
  }

  /**
   * What is compared.
   *
   * @param back the page that this one belongs to
   * @param trains whose points; empty for one loop
   */
  private record Scope(
      String title, String back, ZoneId zone, Optional<Point> loop, List<Train> trains) {}

  /** A point of the scope, as it is told. */
  private record Place(String tag, String train) {}

  record StepLine(String when, String what, String by, long entry, String reason) {}

  record Row(
      String tag,
      String href,
      String train,
      String slot,
      String before,
      String after,
      boolean back,
      List<StepLine> steps) {}

  private static long number(Context http) {
    String id = http.pathParam("id");
    if (!id.matches("\\d{1,18}")) {
      throw new NotFoundResponse();
    }
    return Long.parseLong(id);
  }

  private Scope loop(DSLContext sql, Context http) {
    Point point = plant.pointTagged(sql, http.pathParam("tag")).orElseThrow(NotFoundResponse::new);
    PointPlace place = plant.place(sql, point.id()).orElseThrow(NotFoundResponse::new);
    return new Scope(
        point.tag(),
        "/loops/" + PathSegment.of(point.tag()),
        place.site().zone(),
        Optional.of(point),
        List.of(place.train()));
  }

  private Scope train(DSLContext sql, TrainId id) {
    Train train = plant.train(sql, id).orElseThrow(NotFoundResponse::new);
    Site site = plant.site(sql, train.site()).orElseThrow(NotFoundResponse::new);
    String back = "/plant/trains/" + id.number();
    return new Scope(train.code(), back, site.zone(), Optional.empty(), List.of(train));
  }

  private Scope site(DSLContext sql, SiteId id) {
    Site site = plant.site(sql, id).orElseThrow(NotFoundResponse::new);
    List<Train> trains = plant.trains(sql, id).stream().map(row -> row.train()).toList();
    return new Scope(site.name(), "/plant", site.zone(), Optional.empty(), trains);
  }

  private void show(Context http, Finding finding) {
    Map<String, Object> model = new HashMap<>();
    int status = database.read(sql -> fill(sql, http, finding.in(sql), model));
    page.show(http, status, "past/differences", model);
  }

  private int fill(DSLContext sql, Context http, Scope scope, Map<String, Object> model) {
    Instant now = clock.instant();
    Looking first = Looking.of(http, sql, scope.zone(), now, FIRST);
    Looking second = Looking.of(http, sql, scope.zone(), now, SECOND);
    List<String> complaints = new ArrayList<>(first.complaints());
    complaints.addAll(second.complaints());
    boolean asked = http.queryParam(FIRST.at()) != null;
    boolean compared = complaints.isEmpty() && (first.past() || second.past());
    if (asked && complaints.isEmpty() && !compared) {
      complaints.add(
          "Both are now. Say with which moment, or with what was known when, to compare.");
    }
    model.put("what", scope.title());
    model.put("back", scope.back());
    model.put("here", http.path());
    model.put("zone", scope.zone().getId());
    model.put("first", first);
    model.put("second", second);
    model.put("complaints", complaints);
    model.put("compared", compared);
    model.put("most", MOST);
    model.put("cut", false);
    model.put("rows", List.of());
    if (compared) {
      compare(sql, scope, first.viewpoint(), second.viewpoint(), model);
    }
    return complaints.isEmpty() ? 200 : 422;
  }

  private static SlotStory.View view(Viewpoint viewpoint) {
    Long known = viewpoint.known();
    return new SlotStory.View(viewpoint.at(), known == null ? Long.MAX_VALUE - 1 : known);
  }

  private void compare(
      DSLContext sql, Scope scope, Viewpoint one, Viewpoint other, Map<String, Object> model) {
    boolean turned =
        Comparator.comparing(SlotStory.View::at)
                .thenComparing(SlotStory.View::entry)
                .compare(view(one), view(other))
            > 0;
    SlotStory.View from = view(turned ? other : one);
    SlotStory.View to = view(turned ? one : other);
    Map<Long, Place> places = places(sql, scope, from, to);
    List<Difference> differences = differences(sql, places.keySet(), from, to);
    List<Long> told = differences.stream().map(Difference::point).distinct().limit(MOST).toList();
    model.put("turned", turned);
    model.put("cut", differences.stream().map(Difference::point).distinct().count() > MOST);
    model.put(
        "rows",
        rows(
            sql,
            scope.zone(),
            places,
            differences.stream().filter(d -> told.contains(d.point())).toList()));
  }

  /** The points that may differ; of a whole site only those about which anything was said. */
  private Map<Long, Place> places(
      DSLContext sql, Scope scope, SlotStory.View from, SlotStory.View to) {
    if (scope.loop().isPresent()) {
      Point point = scope.loop().get();
      return Map.of(point.id().number(), new Place(point.tag(), scope.trains().get(0).code()));
    }
    Set<Long> touched =
        history.touched(
            sql,
            new Span(from.at(), to.at().isAfter(from.at()) ? to.at() : to.at().plusNanos(1_000)),
            Math.min(from.entry(), to.entry()),
            Math.max(from.entry(), to.entry()));
    Map<Long, Place> places = new LinkedHashMap<>();
    for (Train train : scope.trains()) {
      plant.walk(sql, train.id()).stream()
          .flatMap(machine -> machine.points().stream())
          .filter(point -> touched.contains(point.id().number()))
          .forEach(point -> places.put(point.id().number(), new Place(point.tag(), train.code())));
    }
    return places;
  }

  /** In the order of the places, slot by slot. */
  private List<Difference> differences(
      DSLContext sql, Collection<Long> points, SlotStory.View from, SlotStory.View to) {
    Map<Long, Map<Slot, List<Belief>>> stories =
        history.ofPoints(sql, points).stream()
            .collect(
                Collectors.groupingBy(
                    belief -> belief.placed().point(),
                    Collectors.groupingBy(
                        belief -> belief.placed().slot(), TreeMap::new, Collectors.toList())));
    return points.stream()
        .flatMap(point -> stories.getOrDefault(point, Map.of()).values().stream())
        .flatMap(beliefs -> new SlotStory(beliefs).between(from, to).stream())
        .toList();
  }

  private List<Row> rows(
      DSLContext sql, ZoneId zone, Map<Long, Place> places, List<Difference> differences) {
    List<Content> contents = differences.stream().flatMap(DifferencePages::contents).toList();
    StayWords words = StayWords.ofContents(sql, parts, contents, zone);
    return differences.stream()
        .map(
            difference ->
                row(difference, Objects.requireNonNull(places.get(difference.point())), words))
        .toList();
  }

  private static Stream<Content> contents(Difference difference) {
    return Stream.concat(
            Stream.of(
                Optional.ofNullable(difference.before()), Optional.ofNullable(difference.after())),
            difference.steps().stream().map(step -> Optional.ofNullable(step.content())))
        .flatMap(Optional::stream);
  }

  private static Row row(Difference difference, Place place, StayWords words) {
    return new Row(
        place.tag(),
        "/loops/" + PathSegment.of(place.tag()),
        place.train(),
        Text.capital(Words.usual(difference.slot())),
        said(difference.before(), words),
        said(difference.after(), words),
        difference.isBack(),
        difference.steps().stream().map(step -> step(step, words)).toList());
  }

  private static String said(@Nullable Content content, StayWords words) {
    return content == null ? "nothing on record" : words.content(content);
  }

  private static StepLine step(Difference.Step step, StayWords words) {
    Instant at = step.at();
    return new StepLine(
        at == null ? "record corrected" : SiteMoment.shown(at, words.zone()),
        said(step.content(), words),
        "%s by %s, entered on %s"
            .formatted(
                step.by().what(), step.by().by(), SiteMoment.shown(step.by().at(), words.zone())),
        step.by().entry(),
        step.by().reason());
  }
}
