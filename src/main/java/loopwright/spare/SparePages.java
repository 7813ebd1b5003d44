package loopwright.spare;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.db.Database;
import loopwright.exchange.FittedPart;
import loopwright.exchange.Proposal;
import loopwright.matching.PartKind;
import loopwright.outage.Outage;
import loopwright.outage.OutagePages;
import loopwright.outage.OutagePart;
import loopwright.outage.ScopeLine;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.remedy.Remedies;
import loopwright.sheet.CsvText;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;

/**
 * Spares of an outage: what fits from stock, what is put aside, where to fetch it, what is short.
 */
public final class SparePages implements Pages, OutagePart {
  private final Database database;
  private final Page page;
  private final Spares spares;
  private final Remedies remedies;

  public SparePages(Database database, Page page, Spares spares, Remedies remedies) {
    this.database = database;
    this.page = page;
    this.spares = spares;
    this.remedies = remedies;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/outages/{number}/spares", Permission.READ, http -> show(http, 200, Form.blank()));
    routes.get("/outages/{number}/pick-list.csv", Permission.READ, this::pickList);
    routes.post("/outages/{number}/spares", Permission.PLAN, this::reserve);
    routes.post("/outages/{number}/spares/release", Permission.PLAN, this::release);
  }

  record HeldLine(
      long reservation,
      String where,
      String label,
      String href,
      String words,
      String tag,
      String tagHref,
      String slot,
      String verdict,
      String proof,
      String who) {}

  /** A part on a shelf that would make a loop whole. */
  record Offer(
      long point,
      String tag,
      String tagHref,
      String slot,
      String label,
      String words,
      String why) {}

  record ShortLine(String what, int howMany, String loops) {}

  private Outage outage(DSLContext sql, Context http) {
    return OutagePages.named(sql, spares.outages(), http);
  }

  record WishLine(long point, String tag, String href, String slot, String reason, String who) {}

  private List<WishLine> wishes(DSLContext sql, Outage outage) {
    return spares.wishes(sql, outage.id()).stream()
        .map(
            wish ->
                new WishLine(
                    wish.point(),
                    wish.tag(),
                    "/loops/" + PathSegment.of(wish.tag()),
                    wish.slot(),
                    wish.reason(),
                    wish.who()))
        .toList();
  }

  void show(Context http, int status, Form form) {
    Map<String, Object> model = new HashMap<>();
    database.snapshot(
        sql -> {
          Outage outage = outage(sql, http);
          List<ScopeLine> scope = spares.outages().scope(sql, outage.id());
          List<Held> held = spares.ofOutageHeld(sql, outage.id());
          model.put("outage", outage);
          model.put("closed", outage.isClosed());
          model.put("held", held.stream().map(SparePages::line).toList());
          model.put("wishes", wishes(sql, outage));
          model.put("loops", choices(scope));
          Map<String, Long> points = new HashMap<>();
          scope.forEach(line -> points.put(line.tag(), line.point()));
          List<Proposal> proposals =
              outage.trains().stream()
                  .map(train -> remedies.propose(sql, OptionalLong.of(train.train())))
                  .toList();
          model.put("offers", offers(proposals, points, held));
          model.put("shortages", shortages(proposals, points.keySet(), held));
          return outage;
        });
    model.put("slots", slots());
    model.put("form", form);
    page.show(http, status, "spare/spares", model);
  }

  private static HeldLine line(Held held) {
    return new HeldLine(
        held.reservation(),
        held.where(),
        held.label(),
        "/parts/" + held.component(),
        held.words(),
        held.tag(),
        "/loops/" + PathSegment.of(held.tag()),
        held.slot(),
        held.verdict(),
        held.proof(),
        held.who());
  }

  private static Map<String, String> choices(List<ScopeLine> scope) {
    Map<String, String> loops = new LinkedHashMap<>();
    scope.forEach(line -> loops.put(Long.toString(line.point()), line.tag()));
    return loops;
  }

  private static Map<String, String> slots() {
    Map<String, String> slots = new LinkedHashMap<>();
    slots.put("probe", "probe");
    slots.put("path-1", "path 1 (extension cable)");
    slots.put("path-2", "path 2");
    slots.put("driver", "driver");
    return slots;
  }

  private static String slot(PartKind kind) {
    return switch (kind.place()) {
      case PROBE_SLOT -> "probe";
      case DRIVER_SLOT -> "driver";
      default -> "path-1";
    };
  }

  /** What the stock can make whole; the dealing is the one with most loops and least work. */
  private static List<Offer> offers(
      List<Proposal> proposals, Map<String, Long> points, List<Held> held) {
    Set<String> served = held.stream().map(Held::tag).collect(Collectors.toSet());
    Set<Long> taken = held.stream().map(Held::component).collect(Collectors.toSet());
    List<Offer> offers = new ArrayList<>();
    for (Proposal proposal : proposals) {
      for (Proposal.FromStock one : proposal.fromStock()) {
        Long point = points.get(one.loop());
        FittedPart part = one.take().part();
        if (point != null && !served.contains(one.loop()) && !taken.contains(part.number())) {
          offers.add(
              new Offer(
                  point,
                  one.loop(),
                  "/loops/" + PathSegment.of(one.loop()),
                  slot(part.kind()),
                  part.label(),
                  part.kind().word() + ", " + one.take().shelf(),
                  "balance now " + one.balance().signedMetres()));
        }
      }
    }
    return offers;
  }

  private static List<ShortLine> shortages(
      List<Proposal> proposals, Set<String> scope, List<Held> held) {
    Set<String> served = held.stream().map(Held::tag).collect(Collectors.toSet());
    List<ShortLine> lines = new ArrayList<>();
    for (Proposal proposal : proposals) {
      for (Proposal.Shortage shortage : proposal.shortages()) {
        List<String> waiting =
            shortage.loops().stream()
                .map(Proposal.Waiting::loop)
                .filter(tag -> scope.contains(tag) && !served.contains(tag))
                .toList();
        if (!waiting.isEmpty()) {
          lines.add(
              new ShortLine(
                  "%s, family %s, %s (%s)"
                      .formatted(
                          shortage.kind().word(),
                          shortage.family(),
                          shortage.length().inMetres(),
                          shortage.length().inFeet()),
                  waiting.size(),
                  String.join(", ", waiting)));
        }
      }
    }
    return lines;
  }

  private void pickList(Context http) {
    CsvText csv =
        new CsvText().row(List.of("store", "bin", "part", "what", "loop", "slot", "outage"));
    database.read(
        sql -> {
          Outage outage = outage(sql, http);
          spares
              .ofOutageHeld(sql, outage.id())
              .forEach(
                  held ->
                      csv.row(
                          List.of(
                              held.store(),
                              held.bin(),
                              held.label(),
                              held.words(),
                              held.tag(),
                              held.slot(),
                              outage.number())));
          return outage;
        });
    http.contentType("text/csv; charset=utf-8");
    http.header("Content-Disposition", "attachment; filename=\"pick-list.csv\"");
    http.result(csv.bytes());
  }

  private void reserve(Context http) {
    Form form = Form.from(http);
    Outage outage = database.read(sql -> outage(sql, http));
    String serial = form.read("serial", text -> Text.needed("the serial", text, 120));
    String loop = form.typed("loop");
    if (!loop.matches("\\d{1,15}")) {
      form.complain("loop", "Choose the loop.");
    }
    if (!form.ok()) {
      show(http, 422, form);
      return;
    }
    Spares.Wish wish = new Spares.Wish(Long.parseLong(loop), form.typed("slot"), serial);
    try {
      database.write(
          People.act(Actor.of(http), "put spare aside", outage.number() + ", " + serial),
          tx -> {
            spares.reserve(tx, outage.id(), wish, form);
            return wish;
          });
      page.go(http, outage.href() + "/spares", serial + " is put aside.");
    } catch (Refused refused) {
      form.complain(refused);
      show(http, 422, form);
    }
  }

  private void release(Context http) {
    Form form = Form.from(http);
    Outage outage = database.read(sql -> outage(sql, http));
    String reason = form.read("reason", text -> Text.needed("why it is released", text, 2000));
    String typed = form.typed("reservation");
    if (!form.ok() || !typed.matches("\\d{1,15}")) {
      show(http, 422, form);
      return;
    }
    try {
      database.write(
          People.act(Actor.of(http), "release spare", reason),
          tx -> {
            spares.release(tx, outage.id(), Long.parseLong(typed), reason);
            return typed;
          });
      page.go(http, outage.href() + "/spares", "Released.");
    } catch (Refused refused) {
      form.complain(refused);
      show(http, 422, form);
    }
  }

  @Override
  public Link link(DSLContext sql, Outage outage) {
    int held = spares.ofOutageHeld(sql, outage.id()).size();
    return new Link(
        "Spares",
        outage.href() + "/spares",
        held == 0
            ? "Nothing is put aside."
            : held + (held == 1 ? " part is put aside." : " parts are put aside."));
  }
}
