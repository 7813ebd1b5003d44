package loopwright.circuit;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.DbProblem;
import loopwright.loop.LoopPanel;
import loopwright.people.People;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.PointId;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.register.ChangeNote;
import loopwright.register.Register;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/** The field circuit of a point: shown with its loop, recorded on a page of its own. */
public final class CircuitPages implements Pages, LoopPanel {
  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Register register;
  private final Circuits circuits;

  public CircuitPages(
      Database database, Page page, Plant plant, Register register, Circuits circuits) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.register = register;
    this.circuits = circuits;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/loops/{tag}/circuit", Permission.RECORD, this::ask);
    routes.post("/loops/{tag}/circuit", Permission.RECORD, this::record);
  }

  /**
   * On the loop's page.
   *
   * @param facts empty where nothing is recorded
   */
  record Panel(Map<String, String> facts, String href) {}

  /** An earlier state of it. */
  record Version(int number, Map<String, String> facts, ChangeNote made) {}

  @Override
  public String template() {
    return "circuit/panel";
  }

  @Override
  public Object model(DSLContext sql, Loop loop) {
    Map<String, String> facts =
        circuits.versions(sql, new PointId(loop.point())).stream()
            .findFirst()
            .map(newest -> CircuitWords.of(sql, register, newest.circuit()))
            .orElse(Map.of());
    return new Panel(facts, "/loops/" + PathSegment.of(loop.tag()) + "/circuit");
  }

  @Override
  public List<Action> actions(Loop loop) {
    return List.of();
  }

  private void ask(Context http) {
    Point point = point(http);
    show(http, 200, point, database.read(sql -> form(sql, point)));
  }

  private Form form(DSLContext sql, Point point) {
    return CircuitForm.of(
        circuits.versions(sql, point.id()).stream()
            .findFirst()
            .map(
                newest ->
                    new CircuitForm.Recorded(
                        newest.circuit(),
                        newest.version(),
                        CircuitWords.label(sql, register, newest.circuit().barrier())))
            .orElse(null));
  }

  private void record(Context http) {
    Point point = point(http);
    Form form = Form.from(http);
    List<Circuits.Recorded> versions = database.read(sql -> circuits.versions(sql, point.id()));
    int present = versions.isEmpty() ? 0 : versions.get(0).version();
    if (form.stale(Integer.toString(present))) {
      form.complain(Refused.say(DbProblem.STALE) + last(versions));
      show(http, 409, point, form.at(Integer.toString(present)));
      return;
    }
    Optional<FieldCircuit> circuit = database.read(sql -> CircuitForm.read(sql, register, form));
    String reason = form.read("reason", typed -> Text.needed("the reason", typed, 400));
    if (circuit.isPresent()
        && form.ok()
        && done(http, form, point, present, circuit.get(), reason)) {
      page.go(http, "/loops/" + PathSegment.of(point.tag()), "Field circuit recorded.");
      return;
    }
    show(http, 422, point, form);
  }

  private static String last(List<Circuits.Recorded> versions) {
    return versions.isEmpty()
        ? ""
        : " The last change was by "
            + versions.get(0).made().by()
            + ": "
            + versions.get(0).made().reason();
  }

  private boolean done(
      Context http, Form form, Point point, int seen, FieldCircuit circuit, String reason) {
    Act act = People.act(Actor.of(http), "field circuit", reason);
    try {
      database.write(
          act,
          tx -> {
            circuits.record(tx, point.id(), seen, circuit);
            return act;
          });
      return true;
    } catch (Refused refused) {
      form.complain(refused);
      return false;
    }
  }

  private void show(Context http, int status, Point point, Form form) {
    Map<String, Object> model = new HashMap<>();
    model.put("form", form);
    model.put("tag", point.tag());
    model.put("href", "/loops/" + PathSegment.of(point.tag()));
    model.put("barriers", CircuitForm.BARRIERS);
    model.put(
        "unitChoices", UnitsShown.of(http).metric() ? List.of("m", "ft") : List.of("ft", "m"));
    model.put(
        "versions",
        database.read(
            sql ->
                circuits.versions(sql, point.id()).stream()
                    .map(
                        one ->
                            new Version(
                                one.version(),
                                CircuitWords.of(sql, register, one.circuit()),
                                one.made()))
                    .toList()));
    page.show(http, status, "circuit/edit", model);
  }

  private Point point(Context http) {
    String tag = http.pathParam("tag");
    return database.read(sql -> plant.pointTagged(sql, tag)).orElseThrow(NotFoundResponse::new);
  }
}
