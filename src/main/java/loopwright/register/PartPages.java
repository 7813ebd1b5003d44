package loopwright.register;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import loopwright.db.Database;
import loopwright.time.SiteMoment;
import loopwright.time.Span;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** The page of one part: what is believed of it, where it is and was, who said so. */
final class PartPages implements Pages {
  private final Database database;
  private final Page page;
  private final Register register;
  private final FamilyBook families;
  private final List<PartPanel> panels;

  PartPages(
      Database database,
      Page page,
      Register register,
      FamilyBook families,
      List<PartPanel> panels) {
    this.database = database;
    this.page = page;
    this.register = register;
    this.families = families;
    this.panels = List.copyOf(panels);
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/parts/{id}", Permission.READ, this::show);
  }

  /** One stay, in words. */
  record Stay(
      String tag,
      String train,
      String slot,
      String from,
      @Nullable String until,
      String source,
      String by) {}

  record PanelShown(String template, Object model) {}

  private void show(Context http) {
    UnitsShown units = UnitsShown.of(http);
    ComponentId id = id(http);
    page.show(http, "register/part", database.read(sql -> model(sql, id, units)));
  }

  /** The number in the address; whatever is none leads to the page that says so. */
  static ComponentId id(Context http) {
    try {
      return new ComponentId(Long.parseLong(http.pathParam("id")));
    } catch (NumberFormatException noNumber) {
      throw new NotFoundResponse();
    }
  }

  private Map<String, Object> model(DSLContext sql, ComponentId id, UnitsShown units) {
    Component part = register.component(sql, id).orElseThrow(NotFoundResponse::new);
    ZoneId zone = register.clock(sql, id);
    Map<Long, String> codes = families.codes(sql);
    List<Belief> all = register.history(sql, id);
    List<Belief> held = register.beliefs(sql, id);
    FactHistory history = new FactHistory(facts -> FactLines.of(part.kind(), facts, codes), zone);
    Map<String, Object> model = new HashMap<>();
    model.put("part", part);
    model.put("state", part.state().word());
    model.put("usable", part.facts().condition() == Condition.USABLE);
    model.put("scrapped", part.facts().condition() == Condition.SCRAPPED);
    model.put("facts", FactLines.of(part.kind(), held.get(held.size() - 1).facts(), codes));
    model.put("family", codes.get(FactRows.number(part.facts().family())));
    model.put("zone", zone.getId());
    model.put("now", register.now(sql, id).stream().map(stay -> stay(stay, zone)).toList());
    model.put("story", register.story(sql, id).stream().map(s -> stay(s, s.zone())).toList());
    model.put("said", history.of(all));
    model.put("since", SiteMoment.shown(held.get(0).span().from(), zone));
    model.put(
        "panels",
        panels.stream().map(p -> new PanelShown(p.template(), p.model(sql, id, units))).toList());
    return model;
  }

  private static Stay stay(Whereabouts stay, ZoneId zone) {
    Span span = stay.span();
    ChangeNote made = stay.made();
    return new Stay(
        stay.tag(),
        stay.train(),
        stay.channel() == 1 ? stay.slot() : stay.slot() + ", channel " + stay.channel(),
        SiteMoment.shown(span.from(), zone),
        span.isOpen() ? null : SiteMoment.shown(span.until(), zone),
        stay.source(),
        made.by() + " on " + SiteMoment.day(made.at(), zone) + ": " + made.reason());
  }
}
