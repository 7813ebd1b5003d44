package loopwright.plant;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.DbProblem;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.problem.TextProblem;
import loopwright.register.Family;
import loopwright.register.FamilyBook;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/** Sites, trains, machines and points, added and changed by hand. */
public final class PlantEditPages implements Pages {
  private final Database database;
  private final Page page;
  private final Plant plant;
  private final FamilyBook families;

  public PlantEditPages(Database database, Page page, Plant plant, FamilyBook families) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.families = families;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/sites/new", Permission.DECIDE, http -> showSite(http, 200, Form.blank()));
    routes.post("/sites/new", Permission.DECIDE, this::addSite);
    routes.get("/trains/new", Permission.DECIDE, http -> showTrain(http, 200, Form.blank()));
    routes.post("/trains/new", Permission.DECIDE, this::addTrain);
    routes.get("/machines/new", Permission.DECIDE, http -> showMachine(http, 200, Form.blank()));
    routes.post("/machines/new", Permission.DECIDE, this::addMachine);
    routes.get("/points/new", Permission.DECIDE, http -> showPoint(http, 200, Form.blank()));
    routes.post("/points/new", Permission.DECIDE, this::addPoint);
    routes.get("/points/{id}/edit", Permission.DECIDE, this::askPoint);
    routes.post("/points/{id}/edit", Permission.DECIDE, this::changePoint);
  }

  private static Act act(Context http, String what, String reason) {
    return People.act(Actor.of(http), what, reason);
  }

  private static String reason(Form form) {
    return form.read("reason", text -> Text.needed("the reason", text, 400));
  }

  private static long number(Context http, String name) {
    try {
      return Long.parseLong(Optional.ofNullable(http.queryParam(name)).orElse(""));
    } catch (NumberFormatException noNumber) {
      throw new NotFoundResponse();
    }
  }

  private void addSite(Context http) {
    Form form = Form.from(http);
    String code = form.read("code", text -> Text.needed("the site's code", text, 20));
    String name = form.read("name", text -> Text.needed("the site's name", text, 120));
    ZoneId zone = form.read("zone", Zones::read);
    String reason = reason(form);
    if (form.ok()) {
      SiteDetails details = new SiteDetails(code, name, zone, form.chosen("adopting", "yes"));
      Optional<SiteId> id =
          PointForm.attempt(
              form,
              "code",
              () ->
                  database.write(act(http, "add site", reason), tx -> plant.addSite(tx, details)));
      if (id.isPresent()) {
        page.go(http, "/trains/new?site=" + id.get().number(), "Site " + code + " is added.");
        return;
      }
    }
    showSite(http, 422, form);
  }

  private void showSite(Context http, int status, Form form) {
    page.show(http, status, "plant/site", Map.of("form", form, "zones", Zones.names()));
  }

  private void addTrain(Context http) {
    Form form = Form.from(http);
    Site site = site(http);
    String code = form.read("code", text -> Text.needed("the train's code", text, 30));
    String name = form.read("name", text -> Text.needed("the train's name", text, 120));
    String reason = reason(form);
    if (form.ok()) {
      Optional<TrainId> id =
          PointForm.attempt(
              form,
              "code",
              () ->
                  database.write(
                      act(http, "add train", reason),
                      tx -> plant.addTrain(tx, site.id(), code, name)));
      if (id.isPresent()) {
        page.go(http, "/machines/new?train=" + id.get().number(), "Train " + code + " is added.");
        return;
      }
    }
    showTrain(http, 422, form);
  }

  private void showTrain(Context http, int status, Form form) {
    page.show(http, status, "plant/train", Map.of("form", form, "site", site(http)));
  }

  private void addMachine(Context http) {
    Form form = Form.from(http);
    Train train = train(http);
    String code = form.read("code", text -> Text.needed("the machine's code", text, 30));
    String name = form.read("name", text -> Text.needed("the machine's name", text, 120));
    Integer place = form.read("place", text -> PointForm.whole(text, "its place", 999));
    String reason = reason(form);
    if (form.ok()) {
      Optional<MachineId> id =
          PointForm.attempt(
              form,
              "code",
              () ->
                  database.write(
                      act(http, "add machine", reason),
                      tx -> plant.addMachine(tx, train.id(), code, name, place)));
      if (id.isPresent()) {
        page.go(http, "/points/new?train=" + train.id().number(), "Machine " + code + " is added.");
        return;
      }
    }
    showMachine(http, 422, form);
  }

  private void showMachine(Context http, int status, Form form) {
    Train train = train(http);
    Map<String, Object> model = new HashMap<>();
    List<Machine> machines = database.read(sql -> plant.machines(sql, train.id()));
    if (status == 200) {
      form.put("place", Integer.toString(machines.size() + 1));
    }
    model.put("form", form);
    model.put("train", train);
    model.put("machines", machines);
    page.show(http, status, "plant/machine", model);
  }

  private void addPoint(Context http) {
    Form form = Form.from(http);
    Train train = train(http);
    Optional<PointDetails> details = PointForm.details(form, database.read(families::all));
    MachineId machine = form.read("machine", text -> machine(train, text));
    String reason = reason(form);
    if (form.ok() && details.isPresent()) {
      Optional<PointId> id =
          PointForm.attempt(
              form,
              "tag",
              () ->
                  database.write(
                      act(http, "add point", reason),
                      tx -> plant.addPoint(tx, machine, details.get())));
      if (id.isPresent()) {
        page.go(http, address(details.get().tag()), details.get().tag() + " is added.");
        return;
      }
    }
    showPoint(http, 422, form);
  }

  private void showPoint(Context http, int status, Form form) {
    show(
        http,
        status,
        form,
        train(http),
        "/points/new?train=" + number(http, "train"),
        "Add a point");
  }

  private void show(Context http, int status, Form form, Train train, String action, String title) {
    Map<String, Object> model = new HashMap<>();
    model.put("form", form);
    model.put("train", train);
    model.put("action", action);
    model.put("title", title);
    model.put("machines", machines(train));
    model.put("kinds", orNone("choose", PointForm.kinds()));
    model.put("rotations", orNone("not said", PointForm.rotations()));
    model.put("marks", orNone("none", PointForm.marks()));
    model.put("states", PointForm.states());
    model.put("families", families());
    model.put(
        "gapUnits", UnitsShown.of(http).metric() ? List.of("µm", "mil") : List.of("mil", "µm"));
    page.show(http, status, "plant/point", model);
  }

  private void askPoint(Context http) {
    Point point = point(http);
    String family = database.read(sql -> code(sql, point));
    showEdit(http, 200, point, PointForm.of(point, family));
  }

  private String code(DSLContext sql, Point point) {
    return point.details().family() == null
        ? ""
        : families.codes(sql).getOrDefault(point.details().family().number(), "");
  }

  private void showEdit(Context http, int status, Point point, Form form) {
    PointPlace place =
        database.read(sql -> plant.place(sql, point.id())).orElseThrow(NotFoundResponse::new);
    String action = "/points/" + point.id().number() + "/edit";
    show(http, status, form, place.train(), action, "Change " + point.tag());
  }

  private void changePoint(Context http) {
    Point point = point(http);
    Form form = Form.from(http);
    String present = Integer.toString(point.version());
    if (form.stale(present)) {
      form.complain(Refused.say(DbProblem.STALE));
      showEdit(http, 409, point, form.at(present));
      return;
    }
    Train train =
        database
            .read(sql -> plant.place(sql, point.id()))
            .orElseThrow(NotFoundResponse::new)
            .train();
    Optional<PointDetails> details = PointForm.details(form, database.read(families::all));
    MachineId machine = form.read("machine", text -> machine(train, text));
    String reason = reason(form);
    if (form.ok() && details.isPresent()) {
      Optional<Boolean> changed =
          PointForm.attempt(
              form,
              "tag",
              () ->
                  database.write(
                      act(http, "change point", reason),
                      tx -> {
                        plant.changePoint(tx, point.id(), point.version(), machine, details.get());
                        return true;
                      }));
      if (changed.isPresent()) {
        page.go(http, address(details.get().tag()), "Changed.");
        return;
      }
    }
    showEdit(http, 422, point, form);
  }

  private static String address(String tag) {
    return "/loops/" + PathSegment.of(tag);
  }

  private Site site(Context http) {
    SiteId id = new SiteId(number(http, "site"));
    return database.read(sql -> plant.site(sql, id)).orElseThrow(NotFoundResponse::new);
  }

  private Train train(Context http) {
    TrainId id = new TrainId(number(http, "train"));
    return database.read(sql -> plant.train(sql, id)).orElseThrow(NotFoundResponse::new);
  }

  private Point point(Context http) {
    try {
      PointId id = new PointId(Long.parseLong(http.pathParam("id")));
      return database.read(sql -> plant.point(sql, id)).orElseThrow(NotFoundResponse::new);
    } catch (NumberFormatException noNumber) {
      throw new NotFoundResponse();
    }
  }

  /** A machine of that train and no other. */
  private MachineId machine(Train train, String number) {
    return database.read(sql -> plant.machines(sql, train.id())).stream()
        .map(Machine::id)
        .filter(id -> Long.toString(id.number()).equals(number))
        .findFirst()
        .orElseThrow(() -> new Refused(TextProblem.MISSING, "the machine it is on"));
  }

  private Map<String, String> machines(Train train) {
    Map<String, String> choices = new LinkedHashMap<>();
    choices.put("", "choose");
    database
        .read(sql -> plant.machines(sql, train.id()))
        .forEach(
            machine ->
                choices.put(
                    Long.toString(machine.id().number()), machine.code() + " · " + machine.name()));
    return choices;
  }

  private Map<String, String> families() {
    Map<String, String> choices = new LinkedHashMap<>();
    choices.put("", "not said");
    for (Family family : database.read(families::all)) {
      choices.put(family.code(), family.code() + " · " + family.name());
    }
    return choices;
  }

  private static Map<String, String> orNone(String shown, Map<String, String> choices) {
    Map<String, String> all = new LinkedHashMap<>();
    all.put("", shown);
    all.putAll(choices);
    return all;
  }
}
