package loopwright.mounting;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.db.Database;
import loopwright.loop.LoopPanel;
import loopwright.people.People;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.units.Numbers;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** How a probe is mounted and reached: shown with its loop, recorded on a page of its own. */
public final class MountingPages implements Pages, LoopPanel {
  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Mountings mountings;

  public MountingPages(Database database, Page page, Plant plant, Mountings mountings) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.mountings = mountings;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/loops/{tag}/mounting", Permission.RECORD, this::ask);
    routes.post("/loops/{tag}/mounting", Permission.RECORD, this::record);
  }

  private Point point(Context http) {
    String tag = http.pathParam("tag");
    return database.read(sql -> plant.pointTagged(sql, tag)).orElseThrow(NotFoundResponse::new);
  }

  private List<Mountings.Version> versions(Point point) {
    return database.read(sql -> mountings.versions(sql, point.id().number()));
  }

  private static String present(List<Mountings.Version> versions) {
    return Integer.toString(versions.isEmpty() ? 0 : versions.get(0).number());
  }

  private void ask(Context http) {
    Point point = point(http);
    List<Mountings.Version> versions = versions(point);
    Mounting now = versions.isEmpty() ? Mounting.NOTHING_SAID : versions.get(0).mounting();
    BigDecimal hours = now.hours();
    Form form =
        Form.of(
            Map.of(
                "thread", now.thread(),
                "torque", now.torque(),
                "depth", now.insertionDepth(),
                "terminals", now.terminals(),
                "access", now.access(),
                "hours", hours == null ? "" : Numbers.plain(hours)));
    show(http, 200, point, form.at(present(versions)));
  }

  private void show(Context http, int status, Point point, Form form) {
    Map<String, Object> model = new HashMap<>();
    model.put("form", form);
    model.put("tag", point.tag());
    model.put("href", href(point.tag()));
    model.put("versions", versions(point));
    page.show(http, status, "mounting/edit", model);
  }

  private static String href(String tag) {
    return "/loops/" + PathSegment.of(tag);
  }

  private void record(Context http) {
    Point point = point(http);
    Form form = Form.from(http);
    Optional<Mounting> mounting = mounting(form);
    String reason = form.read("reason", typed -> Text.needed("the reason", typed, 400));
    if (mounting.isEmpty() || !form.ok()) {
      show(http, 422, point, form);
      return;
    }
    String version = form.version();
    int seen = version.matches("\\d{1,9}") ? Integer.parseInt(version) : -1;
    try {
      database.write(
          People.act(Actor.of(http), "mounting", reason),
          tx -> {
            mountings.record(tx, point.id().number(), seen, mounting.get());
            return point;
          });
      page.go(http, href(point.tag()), "Mounting recorded.");
    } catch (Refused refused) {
      form.complain(refused);
      show(http, 409, point, form.at(present(versions(point))));
    }
  }

  private static Optional<Mounting> mounting(Form form) {
    BigDecimal hours = hours(form);
    if (form.complaint("hours") != null) {
      return Optional.empty();
    }
    return Optional.ofNullable(
        form.read(
            "hours",
            same ->
                new Mounting(
                    form.typed("thread"),
                    form.typed("torque"),
                    form.typed("depth"),
                    form.typed("terminals"),
                    form.typed("access"),
                    hours)));
  }

  private static @Nullable BigDecimal hours(Form form) {
    String typed = form.typed("hours").strip();
    if (typed.isEmpty()) {
      return null;
    }
    Optional<BigDecimal> hours = Numbers.read(typed);
    if (hours.isEmpty()) {
      form.complain(
          "hours", "'" + typed + "' is no number of hours. Write 2.5, or leave it empty.");
    }
    return hours.orElse(null);
  }

  @Override
  public String template() {
    return "mounting/panel";
  }

  /** On the loop's page. */
  record Panel(Map<String, String> facts, String href) {}

  @Override
  public Object model(DSLContext sql, Loop loop) {
    Mounting now =
        mountings.of(sql, List.of(loop.point())).getOrDefault(loop.point(), Mounting.NOTHING_SAID);
    return new Panel(now.facts(), href(loop.tag()) + "/mounting");
  }

  @Override
  public List<Action> actions(Loop loop) {
    return List.of();
  }
}
