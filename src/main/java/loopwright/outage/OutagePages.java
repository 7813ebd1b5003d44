package loopwright.outage;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.db.Database;
import loopwright.people.People;
import loopwright.plant.Plant;
import loopwright.plant.Site;
import loopwright.plant.TrainRow;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.time.SiteMoment;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;

/** List of outages, planning one, its own page, and the shop's steps. */
public final class OutagePages implements Pages {
  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Outages outages;
  private final List<OutagePart> parts;
  private final WorkSteps steps = new WorkSteps();

  public OutagePages(
      Database database, Page page, Plant plant, Outages outages, List<OutagePart> parts) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.outages = outages;
    this.parts = List.copyOf(parts);
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/outages", Permission.READ, this::list);
    routes.get("/outages/new", Permission.PLAN, http -> showNew(http, 200, Form.blank()));
    routes.post("/outages/new", Permission.PLAN, this::plan);
    routes.get("/outages/{number}", Permission.READ, http -> show(http, 200, Form.blank()));
    routes.get("/outages/{number}/edit", Permission.PLAN, this::openEdit);
    routes.post("/outages/{number}/edit", Permission.PLAN, this::edit);
    routes.post("/outages/{number}/begin", Permission.PLAN, this::begin);
    routes.get("/work-steps", Permission.READ, http -> showSteps(http, 200, Form.blank()));
    routes.post("/work-steps", Permission.PLAN, this::writeSteps);
  }

  /**
   * The outage that the address names.
   *
   * @throws NotFoundResponse if there is none
   */
  public static Outage named(DSLContext sql, Outages outages, Context http) {
    return outages.numbered(sql, http.pathParam("number")).orElseThrow(NotFoundResponse::new);
  }

  record Row(String href, String number, String name, String window, String trains, String state) {}

  private void list(Context http) {
    List<Row> rows =
        database.read(sql -> outages.newest(sql).stream().map(OutagePages::row).toList());
    page.show(http, "outage/list", Map.of("rows", rows));
  }

  private static Row row(Outage outage) {
    return new Row(
        outage.href(),
        outage.number(),
        outage.name(),
        outage.begins() + " to " + outage.ends(),
        outage.trainCodes(),
        outage.state().word());
  }

  record TrainChoice(String number, String label, boolean chosen) {}

  private List<TrainChoice> trains(DSLContext sql, Form form, Set<Long> fixed) {
    List<TrainChoice> choices = new ArrayList<>();
    for (Site site : plant.sites(sql)) {
      for (TrainRow row : plant.trains(sql, site.id())) {
        long number = row.train().id().number();
        if (!fixed.contains(number)) {
          String text = Long.toString(number);
          choices.add(
              new TrainChoice(
                  text,
                  row.train().code()
                      + " "
                      + row.train().name()
                      + ", "
                      + site.name()
                      + ", "
                      + row.points()
                      + " loops",
                  form.chosen("train", text)));
        }
      }
    }
    return choices;
  }

  private void showNew(Context http, int status, Form form) {
    Map<String, Object> model = new HashMap<>();
    model.put("form", form);
    model.put("trains", database.read(sql -> trains(sql, form, Set.of())));
    model.put("outage", null);
    page.show(http, status, "outage/edit", model);
  }

  private static Optional<Outage.Details> details(Form form) {
    LocalDate begins = form.read("begins", SiteMoment::day);
    LocalDate ends = form.read("ends", SiteMoment::day);
    String name = form.text("name", 120);
    if (!form.ok()) {
      return Optional.empty();
    }
    return Optional.ofNullable(
        form.read("ends", same -> new Outage.Details(name, begins, ends, form.typed("team"))));
  }

  private static List<Long> chosenTrains(Form form) {
    return form.every("train").stream()
        .filter(text -> text.matches("\\d{1,15}"))
        .map(Long::valueOf)
        .toList();
  }

  private void plan(Context http) {
    Form form = Form.from(http);
    Optional<Outage.Details> details = details(form);
    String reason = form.text("reason", 2000);
    if (details.isEmpty() || !form.ok()) {
      showNew(http, 422, form);
      return;
    }
    Actor actor = Actor.of(http);
    try {
      long outage =
          database.write(
              People.act(actor, "plan outage", reason),
              tx ->
                  outages.plan(tx, details.get(), chosenTrains(form), Long.parseLong(actor.id())));
      page.go(http, "/outages/" + Outage.number(outage) + "/scope", "Planned. Now choose loops.");
    } catch (Refused refused) {
      form.complain(refused);
      showNew(http, 422, form);
    }
  }

  record StepLine(String state, String who, String at, String note) {}

  record Shown(
      Row row, String team, String site, List<StepLine> steps, boolean maybegin, boolean closed) {}

  private static Shown shown(Outage outage) {
    return new Shown(
        row(outage),
        outage.team(),
        outage.siteName(),
        outage.steps().stream()
            .map(
                s ->
                    new StepLine(
                        s.state().word(),
                        s.who(),
                        SiteMoment.shown(s.at(), outage.zone()),
                        s.note()))
            .toList(),
        outage.state() == OutageState.ISSUED,
        outage.isClosed());
  }

  private void show(Context http, int status, Form form) {
    Map<String, Object> model = new HashMap<>();
    database.read(
        sql -> {
          Outage outage = named(sql, outages, http);
          model.put("outage", shown(outage));
          model.put("loops", outages.scope(sql, outage.id()).size());
          model.put("parts", parts.stream().map(part -> part.link(sql, outage)).toList());
          return outage;
        });
    model.put("form", form);
    page.show(http, status, "outage/one", model);
  }

  private void begin(Context http) {
    Form form = Form.from(http);
    String note = form.read("note", text -> Text.needed("a note", text, 2000));
    if (!form.ok()) {
      show(http, 422, form);
      return;
    }
    Actor actor = Actor.of(http);
    Outage outage = database.read(sql -> named(sql, outages, http));
    try {
      database.write(
          People.act(actor, "begin outage", note),
          tx -> {
            outages.moveOn(
                tx, outage.id(), OutageState.UNDER_WAY, Long.parseLong(actor.id()), note);
            return outage;
          });
      page.go(http, outage.href(), "The outage is under way.");
    } catch (Refused refused) {
      form.complain(refused);
      show(http, 422, form);
    }
  }

  private void openEdit(Context http) {
    Outage outage = database.read(sql -> named(sql, outages, http));
    Form form =
        Form.of(
            Map.of(
                "name", outage.name(),
                "begins", outage.begins().toString(),
                "ends", outage.ends().toString(),
                "team", outage.team()));
    showEdit(http, 200, outage, form.at(Integer.toString(outage.version())));
  }

  private void showEdit(Context http, int status, Outage outage, Form form) {
    Set<Long> fixed =
        outage.trains().stream().map(Outage.Standing::train).collect(Collectors.toSet());
    Map<String, Object> model = new HashMap<>();
    model.put("form", form);
    model.put(
        "trains",
        database.read(
            sql ->
                trains(sql, form, fixed).stream()
                    .filter(train -> train.label().contains(", " + outage.siteName() + ", "))
                    .toList()));
    model.put("outage", shown(outage));
    page.show(http, status, "outage/edit", model);
  }

  private void edit(Context http) {
    Form form = Form.from(http);
    Outage outage = database.read(sql -> named(sql, outages, http));
    Optional<Outage.Details> details = details(form);
    String reason = form.text("reason", 2000);
    if (details.isEmpty() || !form.ok()) {
      showEdit(http, 422, outage, form);
      return;
    }
    try {
      database.write(
          People.act(Actor.of(http), "change outage", reason),
          tx -> {
            int seen = form.version().matches("\\d{1,9}") ? Integer.parseInt(form.version()) : 0;
            outages.change(tx, outage.id(), seen, details.get(), chosenTrains(form));
            return outage;
          });
      page.go(http, outage.href(), "Changed.");
    } catch (Refused refused) {
      form.complain(refused);
      Outage now = database.read(sql -> named(sql, outages, http));
      boolean stale = form.stale(Integer.toString(now.version()));
      showEdit(http, stale ? 409 : 422, now, form.at(Integer.toString(now.version())));
    }
  }

  record StepsOf(String work, String label, int version, String text) {
    public String origin() {
      return version == 0
          ? "the program\u2019s own; common practice, no source"
          : "the shop\u2019s version " + version;
    }
  }

  private void showSteps(Context http, int status, Form form) {
    List<StepsOf> all =
        database.read(
            sql ->
                steps.all(sql).entrySet().stream()
                    .map(
                        one ->
                            new StepsOf(
                                one.getKey().word(),
                                one.getKey().label(),
                                steps.version(sql, one.getKey()),
                                form.typed("work").equals(one.getKey().word())
                                    ? form.typed("steps")
                                    : String.join("\n", one.getValue())))
                    .toList());
    page.show(http, status, "outage/steps", Map.of("all", all, "form", form));
  }

  private void writeSteps(Context http) {
    Form form = Form.from(http);
    Work work = Work.named(form.typed("work")).orElseThrow(NotFoundResponse::new);
    String version = form.version();
    try {
      database.write(
          People.act(Actor.of(http), "write work steps", work.label()),
          tx -> {
            int seen = version.matches("\\d{1,9}") ? Integer.parseInt(version) : -1;
            steps.write(tx, work, seen, form.typed("steps"));
            return work;
          });
      page.go(http, "/work-steps", "Steps kept. Packs issued from now on print them.");
    } catch (Refused refused) {
      form.complain(refused);
      showSteps(http, 422, form);
    }
  }
}
