package loopwright.bypass;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.loop.LoopPanel;
import loopwright.loop.Need;
import loopwright.outage.Outage;
import loopwright.outage.OutagePart;
import loopwright.outage.Outages;
import loopwright.people.People;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.PointId;
import loopwright.plant.PointPlace;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.time.SiteMoment;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** The bypass log's pages, and what loops, outages and the first page show of it. */
public final class BypassPages implements Pages, LoopPanel, OutagePart, Need.Source {
  private static final int PAGE = 50;

  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Outages outages;
  private final Bypasses bypasses;
  private final InstantSource clock;

  public BypassPages(
      Database database,
      Page page,
      Plant plant,
      Outages outages,
      Bypasses bypasses,
      InstantSource clock) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.outages = outages;
    this.bypasses = bypasses;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/bypasses", Permission.READ, this::list);
    routes.get("/bypasses/new", Permission.RECORD, this::openNew);
    routes.post("/bypasses/new", Permission.RECORD, this::enter);
    routes.get("/bypasses/{number}", Permission.READ, http -> showOne(http, 200, Form.blank()));
    routes.post(
        "/bypasses/{number}/hand-over",
        Permission.RECORD,
        http ->
            step(
                http,
                "hand bypass over",
                (tx, id, person, form, note) ->
                    bypasses.handOver(tx, id, person, form.typed("to-whom"), note)));
    routes.post(
        "/bypasses/{number}/acknowledge",
        Permission.RECORD,
        http ->
            step(
                http,
                "acknowledge hand-over",
                (tx, id, person, form, note) -> bypasses.acknowledge(tx, id, person, note)));
    routes.post(
        "/bypasses/{number}/remove",
        Permission.RECORD,
        http ->
            step(
                http,
                "remove bypass",
                (tx, id, person, form, note) -> bypasses.remove(tx, id, person, note)));
    routes.post(
        "/bypasses/{number}/prove",
        Permission.RECORD,
        http ->
            step(
                http,
                "prove bypass removed",
                (tx, id, person, form, note) -> bypasses.prove(tx, id, person, note)));
  }

  /** A bypass in a list. */
  public record Row(
      String href,
      String number,
      String tag,
      String tagHref,
      String siteNumber,
      String inhibited,
      String vote,
      String owner,
      String expires,
      String state,
      boolean open,
      boolean overdue) {}

  record StepLine(String word, String who, String at, String note) {}

  record Shown(
      Row row,
      String authoriser,
      String firstOwner,
      String began,
      String entered,
      @Nullable String outage,
      String zone,
      List<StepLine> steps,
      String pending,
      boolean removed) {}

  record OutageChoice(String number, String name) {}

  private ZoneId zone(DSLContext sql, long point) {
    return plant
        .place(sql, new PointId(point))
        .map(PointPlace::site)
        .orElseThrow(NotFoundResponse::new)
        .zone();
  }

  private Row row(DSLContext sql, Bypass bypass) {
    Instant now = clock.instant();
    return new Row(
        bypass.href(),
        bypass.number(),
        bypass.tag(),
        "/loops/" + PathSegment.of(bypass.tag()),
        bypass.siteNumber(),
        bypass.inhibited(),
        bypass.voteMeanwhile(),
        bypass.ownerNow(),
        SiteMoment.shown(bypass.expires(), zone(sql, bypass.point())),
        bypass.stateAt(now),
        bypass.isOpen(),
        bypass.isOverdue(now));
  }

  private List<Row> rows(DSLContext sql, List<Bypass> some) {
    return some.stream().map(bypass -> row(sql, bypass)).toList();
  }

  private void list(Context http) {
    String before = Optional.ofNullable(http.queryParam("before")).orElse("");
    long last = before.matches("\\d{1,18}") ? Long.parseLong(before) : Long.MAX_VALUE;
    Map<String, Object> model = new HashMap<>();
    database.read(
        sql -> {
          List<Bypass> found = bypasses.newest(sql, last, PAGE + 1);
          List<Bypass> shown = found.subList(0, Math.min(PAGE, found.size()));
          model.put("open", rows(sql, bypasses.open(sql)));
          model.put("rows", rows(sql, shown));
          model.put(
              "later", found.size() > PAGE ? "/bypasses?before=" + shown.get(PAGE - 1).id() : null);
          return found;
        });
    page.show(http, "bypass/list", model);
  }

  private void openNew(Context http) {
    Form form = Form.fromQuery(http);
    database.read(
        sql -> {
          plant
              .pointTagged(sql, form.typed("loop"))
              .ifPresent(
                  point -> {
                    String now = SiteMoment.shown(clock.instant(), zone(sql, point.id().number()));
                    form.put("on", now.substring(0, 10)).put("time", now.substring(11));
                  });
          return form;
        });
    showNew(http, 200, form);
  }

  private void showNew(Context http, int status, Form form) {
    Map<String, Object> model = new HashMap<>();
    Map<String, String> choices = new LinkedHashMap<>();
    choices.put("", "none");
    database.read(
        sql -> {
          outages.newest(sql).stream()
              .filter(outage -> !outage.isClosed())
              .forEach(
                  outage -> choices.put(outage.number(), outage.number() + " " + outage.name()));
          return choices;
        });
    model.put("outages", choices);
    model.put("form", form);
    page.show(http, status, "bypass/new", model);
  }

  private void enter(Context http) {
    Form form = Form.from(http);
    Optional<NewBypass> fresh = database.read(sql -> fresh(sql, form));
    if (fresh.isEmpty()) {
      showNew(http, 422, form);
      return;
    }
    try {
      long id =
          database.write(
              People.act(Actor.of(http), "enter bypass", fresh.get().siteNumber()),
              tx -> bypasses.enter(tx, fresh.get()));
      page.go(
          http,
          "/bypasses/BY-" + id,
          "Entered. It stays on the first page until it is proved off.");
    } catch (Refused refused) {
      form.complain(refused);
      showNew(http, 422, form);
    }
  }

  private Optional<NewBypass> fresh(DSLContext sql, Form form) {
    Optional<Point> point = plant.pointTagged(sql, form.typed("loop").strip());
    if (point.isEmpty()) {
      form.complain("loop", Refused.say(BypassProblem.NO_LOOP, form.typed("loop").strip()));
      return Optional.empty();
    }
    long number = point.get().id().number();
    ZoneId zone = zone(sql, number);
    Instant began = moment(form, "on", "time", zone);
    Instant expires = moment(form, "until", "until-time", zone);
    needed(form, "site-number", "the number under the site's procedure", 60);
    needed(form, "inhibited", "the function that is inhibited", 400);
    needed(form, "vote", "how the group votes meanwhile", 200);
    needed(form, "authoriser", "who authorised it", 120);
    needed(form, "owner", "who answers for it", 120);
    Long outage = outages.numbered(sql, form.typed("outage")).map(Outage::id).orElse(null);
    if (!form.ok()) {
      return Optional.empty();
    }
    return Optional.ofNullable(
        form.read(
            "until",
            same ->
                new NewBypass(
                    number,
                    outage,
                    form.typed("site-number"),
                    form.typed("inhibited"),
                    form.typed("vote"),
                    form.typed("authoriser"),
                    form.typed("owner"),
                    began,
                    expires)));
  }

  private static void needed(Form form, String field, String what, int most) {
    form.read(field, text -> Text.needed(what, text, most));
  }

  private static Instant moment(Form form, String dayField, String timeField, ZoneId zone) {
    LocalDate day = form.read(dayField, SiteMoment::day);
    LocalTime time = form.read(timeField, SiteMoment::time);
    return form.complaint(dayField) == null && form.complaint(timeField) == null
        ? form.read(timeField, same -> SiteMoment.of(day, time, zone))
        : Instant.EPOCH;
  }

  private static long number(Context http) {
    String number = http.pathParam("number");
    if (!number.matches("BY-\\d{1,15}")) {
      throw new NotFoundResponse();
    }
    return Long.parseLong(number.substring(3));
  }

  private void showOne(Context http, int status, Form form) {
    Shown shown =
        database.read(
            sql ->
                bypasses
                    .find(sql, number(http))
                    .map(bypass -> shown(sql, bypass))
                    .orElseThrow(NotFoundResponse::new));
    page.show(http, status, "bypass/one", Map.of("bypass", shown, "form", form));
  }

  private Shown shown(DSLContext sql, Bypass bypass) {
    ZoneId zone = zone(sql, bypass.point());
    Long outage = bypass.outage();
    return new Shown(
        row(sql, bypass),
        bypass.authoriser(),
        bypass.owner(),
        SiteMoment.shown(bypass.began(), zone),
        bypass.enteredBy() + ", " + SiteMoment.shown(bypass.enteredAt(), zone),
        outage == null ? null : "O-" + outage,
        zone.getId(),
        bypass.steps().stream()
            .map(
                s ->
                    new StepLine(
                        s.word()
                            + (s.toWhom().isEmpty()
                                ? ""
                                : (s.word().equals(Bypass.HANDED_OVER) ? " to " : " for ")
                                    + s.toWhom()),
                        s.who(),
                        SiteMoment.shown(s.at(), zone),
                        s.note()))
            .toList(),
        bypass.pending().map(Bypass.Step::toWhom).orElse(""),
        bypass.removed().isPresent());
  }

  /** Something that becomes of a bypass. */
  private interface Taking {
    void take(Tx tx, long id, long person, Form form, String note);
  }

  private void step(Context http, String what, Taking taking) {
    Form form = Form.from(http);
    String note = form.read("note", text -> Text.needed("a note", text, 2000));
    if (!form.ok()) {
      showOne(http, 422, form);
      return;
    }
    Actor actor = Actor.of(http);
    long id = number(http);
    try {
      database.write(
          People.act(actor, what, note),
          tx -> {
            taking.take(tx, id, Long.parseLong(actor.id()), form, note);
            return id;
          });
      page.go(http, "/bypasses/BY-" + id, "Kept.");
    } catch (Refused refused) {
      form.complain(refused);
      showOne(http, 422, form);
    }
  }

  @Override
  public String template() {
    return "bypass/panel";
  }

  @Override
  public Object model(DSLContext sql, LoopPanel.Loop loop) {
    return rows(sql, bypasses.ofPoint(sql, loop.point()).stream().filter(Bypass::isOpen).toList());
  }

  @Override
  public List<Action> actions(LoopPanel.Loop loop) {
    return List.of(
        new Action("Enter a bypass", "/bypasses/new?loop=" + PathSegment.of(loop.tag())));
  }

  @Override
  public Link link(DSLContext sql, Outage outage) {
    List<Bypass> all = bypasses.ofOutage(sql, outage.id());
    long open = all.stream().filter(Bypass::isOpen).count();
    return new Link(
        "Bypass log",
        "/bypasses",
        all.isEmpty()
            ? "None is entered for this outage."
            : "%s entered, %s open.".formatted(all.size(), open));
  }

  /** Every open one, until a second person has proved that it is off. */
  @Override
  public List<Need> needs(DSLContext sql, Instant now) {
    return bypasses.open(sql).stream().map(bypass -> need(sql, bypass, now)).toList();
  }

  private Need need(DSLContext sql, Bypass bypass, Instant now) {
    PointPlace place =
        plant.place(sql, new PointId(bypass.point())).orElseThrow(NotFoundResponse::new);
    boolean overdue = bypass.isOverdue(now);
    boolean removed = bypass.removed().isPresent();
    return new Need(
        overdue ? "refused" : "attention",
        overdue ? 0 : 3,
        bypass.href(),
        bypass.number(),
        bypass.tag() + ", " + place.train().code() + ", " + place.site().name(),
        place.train().id().number(),
        "%sBypass %s: %s; votes %s meanwhile. %s answers for it%s; expires %s."
            .formatted(
                overdue ? "OVERDUE. " : "",
                bypass.siteNumber(),
                bypass.inhibited(),
                bypass.voteMeanwhile(),
                bypass.ownerNow(),
                bypass
                    .pending()
                    .map(step -> " until " + step.toWhom() + " acknowledges the hand-over")
                    .orElse(""),
                SiteMoment.shown(bypass.expires(), place.site().zone())),
        bypass.began(),
        "shop",
        removed
            ? "A second person proves that it is off."
            : "Have it taken off under the site's procedure, then say so here.");
  }
}
