package loopwright.temporary;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.db.Database;
import loopwright.loop.LoopPanel;
import loopwright.loop.Need;
import loopwright.people.People;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.PointId;
import loopwright.plant.PointPlace;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.register.ComponentId;
import loopwright.register.Register;
import loopwright.time.SiteMoment;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;

/** Temporary fits of a loop, and of the whole plant. */
public final class TemporaryPages implements Pages, LoopPanel, Need.Source {
  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Register register;
  private final TemporaryFits fits;
  private final InstantSource clock;

  public TemporaryPages(
      Database database,
      Page page,
      Plant plant,
      Register register,
      TemporaryFits fits,
      InstantSource clock) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.register = register;
    this.fits = fits;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/temporary-fits", Permission.READ, this::list);
    routes.get("/loops/{tag}/temporary", Permission.READ, http -> show(http, 200, Form.blank()));
    routes.post("/loops/{tag}/temporary", Permission.RECORD, this::mark);
    routes.post("/loops/{tag}/temporary/settle", Permission.PLAN, this::settle);
  }

  /** A fit as a line. */
  record Line(
      long id,
      String tag,
      String href,
      String slot,
      String label,
      String part,
      String words,
      String insteadOf,
      String returnOn,
      String reason,
      String asked,
      String state,
      boolean open,
      boolean overdue,
      List<String> steps) {}

  static Line line(TemporaryFit fit, LocalDate today) {
    return new Line(
        fit.id(),
        fit.tag(),
        fit.href(),
        fit.slot(),
        fit.label(),
        "/parts/" + fit.component(),
        fit.words(),
        fit.insteadOf(),
        fit.returnOn().toString(),
        fit.reason(),
        "asked for by " + fit.askedBy() + ", entered by " + fit.who(),
        fit.state(today),
        fit.isOpen(),
        fit.isOverdue(today),
        fit.steps().stream().map(TemporaryPages::words).toList());
  }

  private static String words(TemporaryFit.Step step) {
    return (step.stays() ? "stays for good" : "to come out by " + step.returnOn())
        + ", "
        + step.who()
        + ": "
        + step.note();
  }

  private void list(Context http) {
    List<Line> lines =
        database.read(
            sql ->
                fits.open(sql).stream()
                    .sorted(java.util.Comparator.comparing(TemporaryFit::returnOn))
                    .map(fit -> line(fit, today(zone(sql, fit.point()))))
                    .toList());
    page.show(http, "temporary/list", Map.of("lines", lines));
  }

  private Point point(DSLContext sql, Context http) {
    return plant.pointTagged(sql, http.pathParam("tag")).orElseThrow(NotFoundResponse::new);
  }

  private ZoneId zone(DSLContext sql, long point) {
    return place(sql, point).site().zone();
  }

  private PointPlace place(DSLContext sql, long point) {
    return plant.place(sql, new PointId(point)).orElseThrow(NotFoundResponse::new);
  }

  private LocalDate today(ZoneId zone) {
    return SiteMoment.day(clock.instant(), zone);
  }

  private void show(Context http, int status, Form form) {
    Map<String, Object> model = new HashMap<>();
    database.read(
        sql -> {
          Point point = point(sql, http);
          long number = point.id().number();
          LocalDate today = today(zone(sql, number));
          model.put("tag", point.tag());
          model.put("loop", "/loops/" + PathSegment.of(point.tag()));
          List<TemporaryFit> all = fits.ofPoint(sql, number);
          model.put("lines", all.stream().map(fit -> line(fit, today)).toList());
          model.put("open", open(all));
          model.put("slots", slots(sql, number));
          return point;
        });
    model.put("form", form);
    page.show(http, status, "temporary/loop", model);
  }

  private static Map<String, String> open(List<TemporaryFit> all) {
    Map<String, String> open = new LinkedHashMap<>();
    all.stream()
        .filter(TemporaryFit::isOpen)
        .forEach(fit -> open.put(Long.toString(fit.id()), fit.label() + " in " + fit.slot()));
    return open;
  }

  private Map<String, String> slots(DSLContext sql, long point) {
    Map<String, String> slots = new LinkedHashMap<>();
    fits.fitted(sql, point)
        .forEach(
            placed ->
                register
                    .component(sql, new ComponentId(placed.content().component().orElseThrow()))
                    .ifPresent(
                        part ->
                            slots.put(
                                placed.slot().word(),
                                placed.slot().word() + ": " + part.inWords())));
    return slots;
  }

  private void mark(Context http) {
    Form form = Form.from(http);
    LocalDate day = form.read("return-on", SiteMoment::day);
    String reason =
        form.read("reason", text -> Text.needed("why it is fitted for a time", text, 2000));
    String asked = form.read("asked-by", text -> Text.needed("who asked for it", text, 120));
    String instead = form.read("instead-of", text -> Text.kept("what belongs there", text, 400));
    if (!form.ok()) {
      show(http, 422, form);
      return;
    }
    Point point = database.read(sql -> point(sql, http));
    LocalDate today = today(database.read(sql -> zone(sql, point.id().number())));
    try {
      database.write(
          People.act(Actor.of(http), "temporary fit", reason),
          tx -> {
            fits.mark(
                tx,
                point.id().number(),
                point.tag(),
                form.typed("slot"),
                new TemporaryStore.Said(day, instead, reason, asked),
                today);
            return day;
          });
      page.go(
          http,
          "/loops/" + PathSegment.of(point.tag()) + "/temporary",
          "Kept: to come out by " + day + ".");
    } catch (Refused refused) {
      form.complain(refused);
      show(http, 422, form);
    }
  }

  private void settle(Context http) {
    Form form = Form.from(http);
    Point point = database.read(sql -> point(sql, http));
    boolean stays = form.typed("do").equals("stays");
    LocalDate day = stays ? null : form.read("other-day", SiteMoment::day);
    String note = form.read("note", text -> Text.needed("why", text, 2000));
    String fit = form.typed("fit");
    boolean ofLoop =
        fit.matches("\\d{1,15}")
            && database.read(
                sql ->
                    fits.one(sql, Long.parseLong(fit))
                        .filter(one -> one.point() == point.id().number())
                        .isPresent());
    if (!ofLoop) {
      form.complain("fit", Refused.say(TemporaryProblem.NOT_OPEN));
    }
    if (!form.ok()) {
      show(http, 422, form);
      return;
    }
    LocalDate today = today(database.read(sql -> zone(sql, point.id().number())));
    try {
      database.write(
          People.act(
              Actor.of(http), stays ? "temporary fit stays" : "temporary fit extended", note),
          tx -> {
            fits.settle(tx, Long.parseLong(fit), day, note, today);
            return note;
          });
      page.go(
          http,
          "/loops/" + PathSegment.of(point.tag()) + "/temporary",
          stays ? "Kept: it stays." : "Kept: to come out by " + day + ".");
    } catch (Refused refused) {
      form.complain(refused);
      show(http, 422, form);
    }
  }

  @Override
  public String template() {
    return "temporary/panel";
  }

  @Override
  public Object model(DSLContext sql, Loop loop) {
    LocalDate today = today(loop.zone());
    return fits.ofPoint(sql, loop.point()).stream()
        .filter(TemporaryFit::isOpen)
        .map(fit -> line(fit, today))
        .toList();
  }

  @Override
  public List<Action> actions(Loop loop) {
    return List.of(
        new Action("Fitted for a time", "/loops/" + PathSegment.of(loop.tag()) + "/temporary"));
  }

  @Override
  public List<Need> needs(DSLContext sql, Instant now) {
    return fits.open(sql).stream()
        .filter(fit -> fit.isOverdue(SiteMoment.day(now, zone(sql, fit.point()))))
        .map(fit -> need(sql, fit))
        .toList();
  }

  private Need need(DSLContext sql, TemporaryFit fit) {
    PointPlace place = place(sql, fit.point());
    return new Need(
        "attention",
        3,
        fit.href(),
        fit.tag(),
        place.train().code() + ", " + place.site().name(),
        place.train().id().number(),
        "Still temporary and overdue: " + fit.inWords() + ".",
        fit.returnOn().atStartOfDay(place.site().zone()).toInstant(),
        "planner",
        "Have it exchanged, or give it another day with a reason.");
  }
}
