package loopwright.closeout;

import io.javalin.http.Context;
import java.time.InstantSource;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import loopwright.db.Database;
import loopwright.outage.Outage;
import loopwright.outage.OutagePages;
import loopwright.outage.OutagePart;
import loopwright.outage.OutageState;
import loopwright.pack.Returned;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.time.SiteMoment;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/** The close-out of an outage, as page and PDF, closing it, and carrying over. */
public final class CloseOutPages implements Pages, OutagePart {
  private final Database database;
  private final Page page;
  private final CloseOuts closeOuts;
  private final InstantSource clock;

  public CloseOutPages(Database database, Page page, CloseOuts closeOuts, InstantSource clock) {
    this.database = database;
    this.page = page;
    this.closeOuts = closeOuts;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get(
        "/outages/{number}/close-out", Permission.READ, http -> show(http, 200, Form.blank()));
    routes.get("/outages/{number}/close-out.pdf", Permission.READ, this::pdf);
    routes.post("/outages/{number}/close", Permission.PLAN, this::close);
    routes.post("/outages/{number}/carry-over", Permission.PLAN, this::carryOver);
  }

  private Outage outage(DSLContext sql, Context http) {
    return OutagePages.named(sql, closeOuts.outages(), http);
  }

  record Section(String outcome, List<CloseOut.LoopLine> loops) {}

  private void show(Context http, int status, Form form) {
    Map<String, Object> model = new HashMap<>();
    database.snapshot(
        sql -> {
          Outage outage = outage(sql, http);
          CloseOut closeOut = closeOuts.of(sql, outage, UnitsShown.of(http));
          model.put("outage", outage);
          model.put("state", outage.state().word());
          model.put("closed", outage.isClosed());
          model.put("mayclose", outage.state() == OutageState.UNDER_WAY);
          model.put("summary", closeOut.summary());
          model.put("sections", sections(closeOut));
          model.put("bypasses", closeOut.bypasses());
          Map<String, String> blocked =
              outage.isClosed() ? Map.of() : CloseOutPages.blocked(closeOut);
          model.put("blocked", blocked);
          model.put("blockedtags", String.join(", ", blocked.values()));
          model.put("left", closeOut.toCarry().size());
          model.put("others", others(sql, outage));
          return outage;
        });
    model.put("form", form);
    page.show(http, status, "closeout/close-out", model);
  }

  /** Done, but not fit for service: these keep the outage open. */
  private static Map<String, String> blocked(CloseOut closeOut) {
    Map<String, String> blocked = new LinkedHashMap<>();
    closeOut.loops().stream()
        .filter(CloseOut.LoopLine::isBlocked)
        .forEach(loop -> blocked.put(loop.choice(), loop.tag()));
    return blocked;
  }

  private static List<Section> sections(CloseOut closeOut) {
    return Stream.of(
            CloseOut.LoopLine.NOTHING_SAID, Returned.FAILED, Returned.NOT_DONE, Returned.DONE)
        .map(outcome -> new Section(outcome, closeOut.with(outcome)))
        .filter(section -> !section.loops().isEmpty())
        .toList();
  }

  private Map<String, String> others(DSLContext sql, Outage outage) {
    Map<String, String> others = new LinkedHashMap<>();
    closeOuts.outages().newest(sql).stream()
        .filter(other -> other.id() != outage.id() && !other.isClosed())
        .forEach(other -> others.put(other.number(), other.number() + " " + other.name()));
    return others;
  }

  private void pdf(Context http) {
    byte[] bytes =
        database.snapshot(
            sql -> {
              Outage outage = outage(sql, http);
              return CloseOutDocument.of(
                  closeOuts.of(sql, outage, UnitsShown.of(http)),
                  SiteMoment.shown(clock.instant(), outage.zone()));
            });
    http.contentType("application/pdf");
    http.header("Content-Disposition", "inline; filename=\"close-out.pdf\"");
    http.result(bytes);
  }

  private void close(Context http) {
    Form form = Form.from(http);
    String note = form.read("note", text -> Text.needed("a note", text, 2000));
    if (!form.ok()) {
      show(http, 422, form);
      return;
    }
    Actor actor = Actor.of(http);
    Outage outage = database.read(sql -> outage(sql, http));
    try {
      database.write(
          People.act(actor, "close outage", note),
          tx -> {
            closeOuts.close(tx, outage.id(), Long.parseLong(actor.id()), note);
            return outage;
          });
      page.go(http, outage.href() + "/close-out", "Closed.");
    } catch (Refused refused) {
      form.complain(refused);
      show(http, 422, form);
    }
  }

  private void carryOver(Context http) {
    Form form = Form.from(http);
    Outage outage = database.read(sql -> outage(sql, http));
    try {
      CloseOuts.Carried carried =
          database.write(
              People.act(Actor.of(http), "carry over", "from " + outage.number()),
              tx -> {
                Outage to =
                    closeOuts
                        .outages()
                        .numbered(tx.sql(), form.typed("to"))
                        .orElseThrow(() -> new Refused(CloseOutProblem.CARRY_WHERE));
                return closeOuts.carryOver(tx, outage.id(), to.id());
              });
      page.go(http, "/outages/" + form.typed("to") + "/scope?show=taken", sentence(carried));
    } catch (Refused refused) {
      form.complain(refused);
      show(http, 422, form);
    }
  }

  private static String sentence(CloseOuts.Carried carried) {
    String there =
        carried.loops() == 1
            ? "1 loop is carried over."
            : carried.loops() + " loops are carried over.";
    return carried.elsewhere().isEmpty()
        ? there
        : there
            + " Not on its trains, so not carried: "
            + String.join(", ", carried.elsewhere())
            + ".";
  }

  @Override
  public Link link(DSLContext sql, Outage outage) {
    return new Link(
        "Close-out", outage.href() + "/close-out", "Done, not done, failed, still open.");
  }
}
