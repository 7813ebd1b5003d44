package loopwright.concession;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.loop.Combinations;
import loopwright.loop.Judging;
import loopwright.loop.LoopPanel;
import loopwright.loop.Need;
import loopwright.loop.Proposed;
import loopwright.loop.Standings;
import loopwright.matching.Finding;
import loopwright.matching.Verdict;
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

/** Asking for concessions, deciding on them, and what loops and the first page show of them. */
public final class ConcessionPages implements Pages, LoopPanel, Need.Source {
  private static final int PAGE = 50;

  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Proposed proposed;
  private final Concessions concessions;
  private final Standings standings;
  private final InstantSource clock;

  public ConcessionPages(
      Database database,
      Page page,
      Plant plant,
      Proposed proposed,
      Concessions concessions,
      Standings standings,
      InstantSource clock) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.proposed = proposed;
    this.concessions = concessions;
    this.standings = standings;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/concessions", Permission.READ, this::list);
    routes.get("/concessions/{number}", Permission.READ, http -> showOne(http, 200, Form.blank()));
    routes.post(
        "/concessions/{number}/grant",
        Permission.RECORD,
        http -> decide(http, "grant", concessions::grant, "It stands now."));
    routes.post(
        "/concessions/{number}/decline",
        Permission.RECORD,
        http -> decide(http, "decline", concessions::decline, "It is declined."));
    routes.post(
        "/concessions/{number}/withdraw",
        Permission.RECORD,
        http -> decide(http, "withdraw", concessions::withdraw, "It is withdrawn."));
    routes.get("/loops/{tag}/concession", Permission.RECORD, this::openAsking);
    routes.post("/loops/{tag}/concession", Permission.RECORD, this::ask);
  }

  record Row(
      String href,
      String number,
      String tag,
      String tagHref,
      String kind,
      String rules,
      String state,
      String until,
      String askedBy) {}

  record StepLine(String word, String who, String at, String note) {}

  record Shown(
      Row row,
      List<String> parts,
      String reason,
      String measure,
      String asked,
      String zone,
      List<StepLine> steps,
      boolean waiting,
      boolean stands) {}

  record RuleLine(String name, String message, boolean chosen) {}

  record Asking(
      String tag,
      String href,
      String loopHref,
      String zone,
      String drawing,
      String verdict,
      List<RuleLine> refused,
      List<String> unknown,
      List<String> fields) {}

  record Panel(List<Row> rows, String askHref) {}

  private void list(Context http) {
    String before = Optional.ofNullable(http.queryParam("before")).orElse("");
    long last = before.matches("\\d{1,18}") ? Long.parseLong(before) : Long.MAX_VALUE;
    List<Concession> found = database.read(sql -> concessions.newest(sql, last, PAGE + 1));
    List<Concession> shown = found.subList(0, Math.min(PAGE, found.size()));
    Map<String, Object> model = new HashMap<>();
    model.put("rows", database.read(sql -> shown.stream().map(c -> row(sql, c)).toList()));
    model.put(
        "later", found.size() > PAGE ? "/concessions?before=" + shown.get(PAGE - 1).id() : null);
    page.show(http, "concession/list", model);
  }

  private Row row(DSLContext sql, Concession concession) {
    return new Row(
        "/concessions/" + concession.number(),
        concession.number(),
        concession.tag(),
        "/loops/" + PathSegment.of(concession.tag()),
        concession.kind().word(),
        String.join(", ", concession.rules()),
        concession.stateAt(clock.instant()),
        SiteMoment.shown(concession.endsAt(), zone(sql, concession.point())),
        concession.askedByName());
  }

  private ZoneId zone(DSLContext sql, long point) {
    return place(sql, point).site().zone();
  }

  private PointPlace place(DSLContext sql, long point) {
    return plant.place(sql, new PointId(point)).orElseThrow(NotFoundResponse::new);
  }

  private static long number(Context http) {
    String number = http.pathParam("number");
    if (!number.matches("CN-\\d{1,15}")) {
      throw new NotFoundResponse();
    }
    return Long.parseLong(number.substring(3));
  }

  private Concession found(DSLContext sql, Context http) {
    try {
      return concessions.one(sql, number(http));
    } catch (Refused none) {
      throw new NotFoundResponse();
    }
  }

  private void showOne(Context http, int status, Form form) {
    Concession concession = database.read(sql -> found(sql, http));
    Map<String, Object> model = new HashMap<>();
    model.put("concession", database.read(sql -> shown(sql, concession)));
    model.put(
        "notByYou",
        Concessions.mayNotGrant(concession, Actor.of(http))
            .map(ConcessionProblem::sentence)
            .orElse(""));
    model.put("form", form);
    page.show(http, status, "concession/one", model);
  }

  private Shown shown(DSLContext sql, Concession concession) {
    ZoneId zone = zone(sql, concession.point());
    Instant now = clock.instant();
    return new Shown(
        row(sql, concession),
        proposed.partsOf(sql, concession.fingerprint()),
        concession.reason(),
        concession.measure(),
        SiteMoment.shown(concession.askedAt(), zone),
        zone.getId(),
        concession.steps().stream()
            .map(s -> new StepLine(s.word(), s.who(), SiteMoment.shown(s.at(), zone), s.note()))
            .toList(),
        concession.waitsAt(now),
        concession.standsAt(now));
  }

  /** Something that becomes of a concession. */
  private interface Decision {
    void take(Tx tx, Concession concession, Actor by, String note);
  }

  private void decide(Context http, String what, Decision decision, String said) {
    Form form = Form.from(http);
    String note = form.read("note", text -> Text.needed("the reason", text, 2000));
    if (!form.ok()) {
      showOne(http, 422, form);
      return;
    }
    Actor actor = Actor.of(http);
    try {
      database.write(
          People.act(actor, what + " concession", note),
          tx -> {
            Concession concession = concessions.one(tx.sql(), number(http));
            decision.take(tx, concession, actor, note);
            standings.refresh(tx.sql(), List.of(concession.point()));
            return concession;
          });
      page.go(http, "/concessions/CN-" + number(http), said);
    } catch (Refused refused) {
      form.complain(refused);
      showOne(http, 422, form);
    }
  }

  private record Loop(Point point, ZoneId zone) {
    String href() {
      return "/loops/" + PathSegment.of(point.tag());
    }
  }

  private Loop loop(DSLContext sql, Context http) {
    Point point = plant.pointTagged(sql, http.pathParam("tag")).orElseThrow(NotFoundResponse::new);
    return new Loop(point, zone(sql, point.id().number()));
  }

  private void openAsking(Context http) {
    Form form =
        database.read(
            sql -> {
              Loop loop = loop(sql, http);
              Form asked = Form.fromQuery(http);
              boolean named = Proposed.fields().stream().anyMatch(f -> !asked.typed(f).isEmpty());
              return named
                  ? asked
                  : proposed.asFitted(sql, loop.point().id().number(), loop.zone());
            });
    form.put("kind", "FULL").put("until", "").put("time", "");
    showAsking(http, 200, form);
  }

  private void showAsking(Context http, int status, Form form) {
    Asking asking =
        database.read(
            sql -> {
              Loop loop = loop(sql, http);
              return asking(
                  loop,
                  proposed
                      .judged(sql, loop.point().id().number(), loop.point().tag(), form)
                      .orElse(null),
                  form);
            });
    page.show(http, status, "concession/ask", Map.of("asking", asking, "form", form));
  }

  private static Asking asking(Loop loop, Judging.@Nullable Judged judged, Form form) {
    List<Finding> against = judged == null ? List.of() : judged.judgement().againstAssembly();
    return new Asking(
        loop.point().tag(),
        loop.href() + "/concession",
        loop.href(),
        loop.zone().getId(),
        judged == null ? "" : Proposed.drawing(judged),
        judged == null ? "unknown" : judged.judgement().verdict().word(),
        against.stream()
            .filter(finding -> finding.verdict() == Verdict.REFUSED)
            .map(
                f ->
                    new RuleLine(
                        f.rule().name(), f.message(), form.chosen("rule", f.rule().name())))
            .toList(),
        against.stream()
            .filter(finding -> finding.verdict() == Verdict.UNKNOWN)
            .map(Finding::message)
            .toList(),
        Proposed.fields());
  }

  private void ask(Context http) {
    Form form = Form.from(http);
    Optional<Long> id = asked(http, form);
    if (id.isPresent()) {
      page.go(
          http,
          "/concessions/CN-" + id.get(),
          "CN-" + id.get() + " is asked for. Another person has to decide on it.");
    } else {
      showAsking(http, 422, form);
    }
  }

  private Optional<Long> asked(Context http, Form form) {
    Loop loop = database.read(sql -> loop(sql, http));
    ConcessionKind kind = form.oneOf("kind", ConcessionKind.class);
    String reason = form.read("reason", text -> Text.needed("the reason", text, 2000));
    String measure =
        form.read("measure", text -> Text.needed("what is done meanwhile", text, 2000));
    LocalDate day = form.read("until", SiteMoment::day);
    LocalTime time = form.read("time", SiteMoment::time);
    if (!form.ok()) {
      return Optional.empty();
    }
    Instant until = form.read("time", typed -> SiteMoment.of(day, time, loop.zone()));
    if (!form.ok()) {
      return Optional.empty();
    }
    Actor actor = Actor.of(http);
    try {
      return database.write(
          People.act(actor, "ask for concession", reason),
          tx -> Optional.of(ask(tx, loop, form, new Terms(kind, reason, measure, until), actor)));
    } catch (Refused refused) {
      form.complain(refused);
      return Optional.empty();
    }
  }

  private record Terms(ConcessionKind kind, String reason, String measure, Instant until) {}

  private long ask(Tx tx, Loop loop, Form form, Terms terms, Actor actor) {
    long point = loop.point().id().number();
    Judging.Judged judged =
        proposed
            .judged(tx.sql(), point, loop.point().tag(), form)
            .orElseThrow(() -> new Refused(ConcessionProblem.UNREAD_PARTS));
    String fingerprint =
        Combinations.fingerprint(judged.chain())
            .orElseThrow(() -> new Refused(ConcessionProblem.UNKNOWN_PARTS));
    Asked asked =
        new Asked(
            point,
            fingerprint,
            terms.kind(),
            form.every("rule").stream().filter(rule -> !rule.isBlank()).toList(),
            terms.reason(),
            terms.measure(),
            terms.until());
    return concessions.ask(tx, asked, judged, Long.parseLong(actor.id()));
  }

  @Override
  public String template() {
    return "concession/panel";
  }

  @Override
  public Object model(DSLContext sql, LoopPanel.Loop loop) {
    List<Row> rows = concessions.ofPoint(sql, loop.point()).stream().map(c -> row(sql, c)).toList();
    return new Panel(rows, "/loops/" + PathSegment.of(loop.tag()) + "/concession");
  }

  @Override
  public List<Action> actions(LoopPanel.Loop loop) {
    return List.of(
        new Action("Ask for a concession", "/loops/" + PathSegment.of(loop.tag()) + "/concession"));
  }

  /** Those that wait for somebody to decide. */
  @Override
  public List<Need> needs(DSLContext sql, Instant now) {
    return concessions.waiting(sql).stream().map(waiting -> need(sql, waiting)).toList();
  }

  private Need need(DSLContext sql, Concession waiting) {
    PointPlace place = place(sql, waiting.point());
    boolean full = waiting.kind() == ConcessionKind.FULL;
    return new Need(
        "attention",
        3,
        "/concessions/" + waiting.number(),
        waiting.number(),
        waiting.tag() + ", " + place.train().code() + ", " + place.site().name(),
        place.train().id().number(),
        "%s asks for a concession: %s."
            .formatted(waiting.askedByName(), String.join(", ", waiting.rules())),
        waiting.askedAt(),
        full ? "engineer" : "shop",
        full ? "Grant or decline it." : "A second person of the shop grants or declines it.");
  }
}
