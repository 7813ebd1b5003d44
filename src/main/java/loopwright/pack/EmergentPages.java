package loopwright.pack;

import io.javalin.http.Context;
import java.time.Instant;
import java.time.InstantSource;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.db.Database;
import loopwright.loop.TypedMoment;
import loopwright.outage.Emergent;
import loopwright.outage.Outage;
import loopwright.outage.OutagePages;
import loopwright.outage.OutageState;
import loopwright.outage.ScopeLine;
import loopwright.outage.Work;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;

/** Work that turns up while an outage is under way: who found it, when, why; a revision at once. */
public final class EmergentPages implements Pages {
  private final Database database;
  private final Page page;
  private final Packs packs;
  private final InstantSource clock;

  public EmergentPages(Database database, Page page, Packs packs, InstantSource clock) {
    this.database = database;
    this.page = page;
    this.packs = packs;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get(
        "/outages/{number}/emergent", Permission.READ, http -> show(http, 200, Form.blank()));
    routes.post("/outages/{number}/emergent", Permission.PLAN, this::add);
  }

  record Line(String tag, String href, String words, String who) {}

  record WorkChoice(String word, String label, boolean chosen) {}

  private void show(Context http, int status, Form form) {
    Map<String, Object> model = new HashMap<>();
    database.read(
        sql -> {
          Outage outage = OutagePages.named(sql, packs.outages(), http);
          model.put("outage", outage);
          model.put("state", outage.state().word());
          model.put("underway", outage.state() == OutageState.UNDER_WAY);
          model.put("lines", lines(sql, outage));
          model.put("loops", loops(sql, outage));
          return outage;
        });
    model.put(
        "works",
        Stream.of(Work.values())
            .map(
                work -> new WorkChoice(work.word(), work.label(), form.chosen("work", work.word())))
            .toList());
    model.put("form", form);
    page.show(http, status, "pack/emergent", model);
  }

  private List<Line> lines(DSLContext sql, Outage outage) {
    return packs.outages().emergent(sql, outage.id()).stream()
        .map(
            one ->
                new Line(
                    one.tag(),
                    "/loops/" + PathSegment.of(one.tag()),
                    one.inWords(outage.zone()),
                    one.who()))
        .toList();
  }

  private Map<String, String> loops(DSLContext sql, Outage outage) {
    Set<Long> scope =
        packs.outages().scope(sql, outage.id()).stream()
            .map(ScopeLine::point)
            .collect(Collectors.toSet());
    Map<String, String> loops = new LinkedHashMap<>();
    packs
        .outages()
        .loops(sql, outage)
        .forEach(
            loop -> {
              long point = loop.point().id().number();
              loops.put(
                  Long.toString(point),
                  loop.point().tag() + (scope.contains(point) ? "" : ", not in the pack yet"));
            });
    return loops;
  }

  private void add(Context http) {
    Form form = Form.from(http);
    Outage outage = database.read(sql -> OutagePages.named(sql, packs.outages(), http));
    Optional<Emergent.Said> said = said(form, outage);
    if (said.isEmpty()) {
      show(http, 422, form);
      return;
    }
    Actor actor = Actor.of(http);
    try {
      int revision =
          database.write(
              People.act(actor, "add emergent work", said.get().reason()),
              tx -> packs.addEmergent(tx, outage.id(), Long.parseLong(actor.id()), said.get()));
      page.go(
          http,
          outage.href() + "/pack",
          "Revision " + revision + " is issued with it; all other sheets stay as they are.");
    } catch (Refused refused) {
      form.complain(refused);
      show(http, 422, form);
    }
  }

  private Optional<Emergent.Said> said(Form form, Outage outage) {
    String loop = form.typed("loop");
    if (!loop.matches("\\d{1,15}")) {
      form.complain("loop", "Choose the loop.");
    }
    List<Work> works =
        form.every("work").stream().map(Work::named).flatMap(Optional::stream).toList();
    String foundBy = form.read("found-by", text -> Text.needed("who found it", text, 120));
    String reason = form.read("reason", text -> Text.needed("why it is needed", text, 2000));
    Optional<Instant> at = TypedMoment.read(form, outage.zone(), clock.instant());
    return at.isEmpty() || !form.ok()
        ? Optional.empty()
        : Optional.of(new Emergent.Said(Long.parseLong(loop), works, foundBy, at.get(), reason));
  }
}
