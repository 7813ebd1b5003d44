package loopwright.fieldcheck;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.loop.LoopPanel;
import loopwright.loop.LoopStory;
import loopwright.matching.Verdict;
import loopwright.people.People;
import loopwright.plant.Plant;
import loopwright.plant.PointId;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.time.SiteMoment;
import loopwright.time.Viewpoint;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;

/** Small forms for the other records of a job, and what loops show of them. */
public final class CheckPages implements Pages, LoopPanel, LoopStory {
  private static final int ON_LOOP = 8;
  private static final int IN_LIST = 500;

  private final Database database;
  private final Page page;
  private final Plant plant;
  private final GapReadings readings;
  private final FieldChecks checks;
  private final InstantSource clock;

  public CheckPages(
      Database database,
      Page page,
      Plant plant,
      GapReadings readings,
      FieldChecks checks,
      InstantSource clock) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.readings = readings;
    this.checks = checks;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/loops/{tag}/checks", Permission.READ, this::list);
    routes.get("/loops/{tag}/checks/gap-reading", Permission.RECORD, this::openReading);
    routes.post("/loops/{tag}/checks/gap-reading", Permission.RECORD, this::keepReading);
    routes.get("/loops/{tag}/checks/{kind}", Permission.RECORD, this::open);
    routes.post("/loops/{tag}/checks/{kind}", Permission.RECORD, this::keep);
    routes.get("/checks/{number}", Permission.READ, this::one);
  }

  record Way(String label, String href) {}

  record Panel(List<RecordRow> rows, List<Way> ways, String allHref) {}

  record Line(String label, String value) {}

  record Shown(
      String number,
      String tag,
      String loopHref,
      String kind,
      String verdict,
      String when,
      String by,
      String note,
      String entered,
      List<Line> lines,
      List<String> headings,
      List<List<String>> rows,
      List<SaidLine> said,
      String drawing) {}

  record SaidLine(String verdict, String about, String sentence, String basis) {}

  private static List<Way> ways(String loopHref) {
    return Stream.concat(
            Stream.of(new Way("Gap reading", loopHref + "/checks/gap-reading")),
            Stream.of(CheckKind.values())
                .map(
                    kind ->
                        new Way(Text.capital(kind.word()), loopHref + "/checks/" + kind.slug())))
        .toList();
  }

  private OpenedLoop opened(Context http) {
    return database.read(sql -> OpenedLoop.of(sql, plant, http));
  }

  private void list(Context http) {
    Map<String, Object> model = new HashMap<>();
    database.read(
        sql -> {
          OpenedLoop loop = OpenedLoop.of(sql, plant, http);
          model.put("loop", loop);
          model.put("ways", ways(loop.href()));
          model.put("rows", rows(sql, loop.number(), loop.zone(), Viewpoint.LATEST, IN_LIST));
          return loop;
        });
    page.show(http, "fieldcheck/list", model);
  }

  private List<RecordRow> rows(
      DSLContext sql, long point, ZoneId zone, Viewpoint viewpoint, int most) {
    return RecordRow.of(
        readings.ofPoint(sql, point, viewpoint, most),
        checks.ofPoint(sql, point, viewpoint, most),
        zone,
        most);
  }

  private void openReading(Context http) {
    OpenedLoop loop = opened(http);
    showReading(http, 200, loop, loop.fresh(clock.instant(), Actor.of(http)));
  }

  private void showReading(Context http, int status, OpenedLoop loop, Form form) {
    page.show(
        http,
        status,
        "fieldcheck/gap-reading",
        Map.of(
            "loop",
            loop,
            "form",
            form,
            "voltUnits",
            GapReadingForm.UNITS,
            "states",
            GapReadingForm.states(),
            "warmths",
            GapReadingForm.warmths(),
            "places",
            GapReadingForm.places()));
  }

  private void keepReading(Context http) {
    OpenedLoop loop = opened(http);
    Form form = Form.from(http);
    Optional<NewGapReading> fresh =
        GapReadingForm.read(form, loop.number(), loop.zone(), clock.instant());
    boolean kept =
        fresh.isPresent()
            && written(http, form, "gap reading", tx -> readings.keep(tx, fresh.get())).isPresent();
    boolean known =
        !kept
            && fresh.isPresent()
            && database.read(sql -> readings.same(sql, fresh.get())).isPresent();
    if (kept || known) {
      page.go(http, loop.href(), kept ? "The gap reading is kept." : "It was kept already.");
    } else {
      showReading(http, 422, loop, form);
    }
  }

  private <R> Optional<R> written(Context http, Form form, String what, Function<Tx, R> work) {
    try {
      return Optional.of(
          database.write(
              People.act(Actor.of(http), what, form.typed("reason").strip()), work::apply));
    } catch (Refused refused) {
      form.complain(refused);
      return Optional.empty();
    }
  }

  private static CheckKind kind(Context http) {
    return CheckKind.slugged(http.pathParam("kind")).orElseThrow(NotFoundResponse::new);
  }

  private void open(Context http) {
    CheckKind kind = kind(http);
    OpenedLoop loop = opened(http);
    show(http, 200, kind, loop, loop.fresh(clock.instant(), Actor.of(http)));
  }

  private void show(Context http, int status, CheckKind kind, OpenedLoop loop, Form form) {
    Map<String, Object> model = new HashMap<>();
    model.put("loop", loop);
    model.put("form", form);
    model.put("heading", Text.capital(kind.word()));
    model.put("about", kind.about());
    model.put("items", kind.items());
    model.put("columns", kind.columns());
    model.put("cells", cells(kind, form));
    model.put("href", loop.href() + "/checks/" + kind.slug());
    page.show(http, status, "fieldcheck/check", model);
  }

  /** What was typed into the table, a row with all its columns. */
  private static List<List<String>> cells(CheckKind kind, Form form) {
    List<List<String>> rows = new ArrayList<>();
    for (int row = 0; row < kind.rows(); row++) {
      int at = row;
      rows.add(
          kind.columns().stream()
              .map(column -> form.every(column.name()))
              .map(typed -> at < typed.size() ? typed.get(at) : "")
              .toList());
    }
    return rows;
  }

  private void keep(Context http) {
    CheckKind kind = kind(http);
    OpenedLoop loop = opened(http);
    Form form = Form.from(http);
    Optional<NewCheck> fresh =
        CheckForm.read(kind, form, loop.number(), loop.zone(), clock.instant());
    Optional<Long> kept =
        fresh.flatMap(
            check -> written(http, form, kind.word(), tx -> checks.keep(tx, loop.point(), check)));
    Optional<Long> known =
        kept.isPresent()
            ? Optional.empty()
            : fresh.flatMap(
                check -> database.read(sql -> checks.same(sql, check)).map(FieldCheck::id));
    if (kept.or(() -> known).isPresent()) {
      page.go(
          http,
          "/checks/J-" + kept.or(() -> known).get(),
          kept.isPresent() ? "It is kept." : "It was kept already.");
    } else {
      show(http, 422, kind, loop, form);
    }
  }

  private void one(Context http) {
    String number = http.pathParam("number");
    if (!number.matches("J-\\d{1,15}")) {
      throw new NotFoundResponse();
    }
    long id = Long.parseLong(number.substring(2));
    Shown shown =
        database.read(sql -> shown(sql, checks.one(sql, id).orElseThrow(NotFoundResponse::new)));
    page.show(http, "fieldcheck/one", Map.of("check", shown));
  }

  private Shown shown(DSLContext sql, FieldCheck check) {
    ZoneId zone =
        plant
            .place(sql, new PointId(check.point()))
            .orElseThrow(NotFoundResponse::new)
            .site()
            .zone();
    return new Shown(
        check.number(),
        check.tag(),
        OpenedLoop.hrefOf(check.tag()),
        Text.capital(check.kind().word()),
        check.verdict(),
        SiteMoment.shown(check.takenAt(), zone) + " " + zone.getId(),
        check.takenBy(),
        check.note(),
        check.enteredBy()
            + " on "
            + SiteMoment.shown(check.enteredAt(), zone)
            + ": "
            + check.reason(),
        check.entries().all().stream()
            .filter(entered -> entered.row() == 0)
            .map(entered -> new Line(check.kind().label(entered.item()), entered.shown()))
            .toList(),
        check.kind().columns().stream().map(Item::label).toList(),
        rows(check),
        check.said().stream()
            .map(s -> new SaidLine(s.verdict().word(), s.about(), s.sentence(), s.basis()))
            .toList(),
        plant
            .point(sql, new PointId(check.point()))
            .flatMap(point -> checks.drawing(sql, point, check))
            .orElse(""));
  }

  private static List<List<String>> rows(FieldCheck check) {
    List<List<String>> rows = new ArrayList<>();
    for (int row = 1; row <= check.entries().rows(); row++) {
      int at = row;
      rows.add(
          check.kind().columns().stream()
              .map(column -> check.entries().reported(column.name(), at))
              .map(number -> number.map(Object::toString).orElse(""))
              .toList());
    }
    return rows;
  }

  @Override
  public String template() {
    return "fieldcheck/panel";
  }

  @Override
  public Object model(DSLContext sql, Loop loop) {
    String href = OpenedLoop.hrefOf(loop.tag());
    return new Panel(
        rows(sql, loop.point(), loop.zone(), loop.viewpoint(), ON_LOOP),
        ways(href),
        href + "/checks");
  }

  @Override
  public List<Told> story(DSLContext sql, Loop loop, int most) {
    return rows(sql, loop.point(), loop.zone(), loop.viewpoint(), most).stream()
        .map(
            row ->
                new Told(
                    row.at(),
                    row.kind(),
                    row.verdict().equals(Verdict.NOT_JUDGED.word()) ? null : row.verdict(),
                    row.said(),
                    "by " + row.by(),
                    row.href()))
        .toList();
  }

  @Override
  public List<Action> actions(Loop loop) {
    return List.of(
        new Action("Gap reading", OpenedLoop.hrefOf(loop.tag()) + "/checks/gap-reading"));
  }
}
