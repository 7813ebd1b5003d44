package loopwright.spare;

import io.javalin.http.Context;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import loopwright.db.Database;
import loopwright.loop.Judging;
import loopwright.outage.Outage;
import loopwright.people.People;
import loopwright.plant.Channels;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.register.FamilyBook;
import loopwright.register.Register;
import loopwright.remedy.Remedies;
import loopwright.sheet.CsvText;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;

/** Who gets which spare over all open outages, who is left without and why; taken over at once. */
public final class AllocationPages implements Pages {
  private static final String PATH = "/spare-allocation";

  private final Database database;
  private final Page page;
  private final Allocations allocations;

  /**
   * @param facts beside those that spares know
   */
  public AllocationPages(Database database, Page page, Spares spares, Facts facts) {
    this.database = database;
    this.page = page;
    this.allocations =
        spares.allocations(
            new Wants.Sources(
                spares.outages(),
                facts.register(),
                facts.families(),
                facts.channels(),
                facts.remedies(),
                facts.judging(),
                facts.clock()));
  }

  /** Where the facts come from. */
  public record Facts(
      Register register,
      FamilyBook families,
      Channels channels,
      Remedies remedies,
      Judging judging,
      java.time.InstantSource clock) {}

  @Override
  public void mount(Routes routes) {
    routes.get(PATH, Permission.READ, http -> show(http, 200, Form.blank()));
    routes.get(PATH + ".csv", Permission.READ, this::csv);
    routes.post(PATH, Permission.PLAN, this::takeOver);
  }

  /**
   * A line of the page.
   *
   * @param outage number and first day
   */
  record Line(
      String tag,
      String href,
      String outage,
      String outageHref,
      String window,
      String why,
      String slot,
      String label,
      String part,
      String words,
      String where,
      String verdict,
      String change,
      boolean stays,
      List<String> left) {}

  /** What would be free or promised anew. */
  record Freed(String label, String href, String what) {}

  private static Line line(Dealing.Served served) {
    Want want = served.want();
    Want.Option option = served.option();
    return new Line(
        want.tag(),
        "/loops/" + PathSegment.of(want.tag()),
        want.outage().number(),
        want.outage().href(),
        window(want),
        want.why(),
        option.slot().word(),
        option.label(),
        "/parts/" + option.part(),
        option.words(),
        option.where(),
        served.verdict(),
        served.change(),
        served.stays(),
        List.of());
  }

  private static Line line(Dealing.Left left) {
    Want want = left.want();
    Held held = want.held();
    return new Line(
        want.tag(),
        "/loops/" + PathSegment.of(want.tag()),
        want.outage().number(),
        want.outage().href(),
        window(want),
        want.why(),
        want.slot().isEmpty() ? "any" : want.slot(),
        "",
        "",
        want.needs(),
        "",
        "",
        held == null || want.isFixed() ? "" : held.label() + " would be released",
        false,
        left.why());
  }

  private static String window(Want want) {
    Outage outage = want.outage();
    return outage.state().word() + ", " + outage.begins() + " to " + outage.ends();
  }

  private static String freed(Dealing dealing, Held held) {
    return dealing.served().stream()
        .filter(one -> one.option().part() == held.component())
        .findFirst()
        .map(one -> "goes from " + held.tag() + " to " + one.want().loopAndOutage())
        .orElse("put aside for " + held.tag() + " now, would be free");
  }

  private void show(Context http, int status, Form form) {
    Map<String, Object> model = new HashMap<>();
    database.snapshot(
        sql -> {
          Dealing dealing = allocations.propose(sql);
          model.put("served", dealing.served().stream().map(AllocationPages::line).toList());
          model.put("left", dealing.left().stream().map(AllocationPages::line).toList());
          model.put(
              "freed",
              dealing.released().stream()
                  .map(
                      held ->
                          new Freed(
                              held.label(), "/parts/" + held.component(), freed(dealing, held)))
                  .toList());
          model.put("outages", allocations.open(sql).size());
          model.put("changes", !dealing.changesNothing());
          model.put("taken", dealing.taken().size());
          model.put("fingerprint", dealing.fingerprint());
          return dealing;
        });
    model.put("form", form);
    page.show(http, status, "spare/allocation", model);
  }

  private void takeOver(Context http) {
    Form form = Form.from(http);
    String reason = form.read("reason", text -> Text.needed("why it is taken over", text, 2000));
    if (!form.ok()) {
      show(http, 422, form);
      return;
    }
    try {
      Dealing taken =
          database.write(
              People.act(Actor.of(http), "deal spares", reason),
              tx -> allocations.takeOver(tx, form.typed("dealing")));
      page.go(
          http,
          PATH,
          "%s put aside, %s released.".formatted(taken.taken().size(), taken.released().size()));
    } catch (Refused refused) {
      form.complain(refused);
      show(http, refused.problem() == SpareProblem.DEALT_ANEW ? 409 : 422, form);
    }
  }

  private void csv(Context http) {
    CsvText csv =
        new CsvText()
            .row(
                List.of(
                    "outage",
                    "window",
                    "loop",
                    "slot",
                    "wanted_because",
                    "part",
                    "what",
                    "where",
                    "judged_with_it",
                    "change",
                    "left_without_because"));
    database.snapshot(
        sql -> {
          Dealing dealing = allocations.propose(sql);
          dealing.served().forEach(one -> csv.row(cells(line(one))));
          dealing.left().forEach(one -> csv.row(cells(line(one))));
          return dealing;
        });
    http.contentType("text/csv; charset=utf-8");
    http.header("Content-Disposition", "attachment; filename=\"spare-allocation.csv\"");
    http.result(csv.bytes());
  }

  private static List<String> cells(Line line) {
    return List.of(
        line.outage(),
        line.window(),
        line.tag(),
        line.slot(),
        line.why(),
        line.label(),
        line.words(),
        line.where(),
        line.verdict(),
        line.change(),
        String.join(" ", line.left()));
  }
}
