package loopwright.register;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.db.Database;
import loopwright.journal.Looking;
import loopwright.matching.PartState;
import loopwright.time.SiteMoment;
import loopwright.time.Span;
import loopwright.time.Viewpoint;
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
  private final InstantSource clock;

  PartPages(
      Database database,
      Page page,
      Register register,
      FamilyBook families,
      List<PartPanel> panels,
      InstantSource clock) {
    this.clock = clock;
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
    Map<String, Object> model = new HashMap<>();
    Looking look =
        database.read(
            sql -> {
              Component part = register.component(sql, id).orElseThrow(NotFoundResponse::new);
              ZoneId zone = register.clock(sql, id);
              Looking looking = Looking.of(http, sql, zone, clock.instant());
              fill(sql, part, zone, looking, model);
              fillPanels(sql, id, units, looking, model);
              return looking;
            });
    page.show(http, look.status(), "register/part", model);
  }

  /** The number in the address; whatever is none leads to the page that says so. */
  static ComponentId id(Context http) {
    try {
      return new ComponentId(Long.parseLong(http.pathParam("id")));
    } catch (NumberFormatException noNumber) {
      throw new NotFoundResponse();
    }
  }

  private void fill(
      DSLContext sql, Component part, ZoneId zone, Looking look, Map<String, Object> model) {
    ComponentId id = part.id();
    Map<Long, String> codes = families.codes(sql);
    Viewpoint viewpoint = look.viewpoint();
    Optional<ComponentFacts> facts = facts(sql, id, look);
    List<Whereabouts> story = register.story(sql, id, viewpoint);
    List<Whereabouts> here =
        story.stream().filter(stay -> stay.span().contains(viewpoint.at())).toList();
    FactHistory history = new FactHistory(f -> FactLines.of(part.kind(), f, codes), zone);
    model.put("look", look);
    model.put("here", "/parts/" + id.number());
    model.put("part", part);
    model.put("state", state(part, facts, here, look));
    model.put("usable", facts.map(f -> f.condition() == Condition.USABLE).orElse(true));
    model.put("conditionReason", facts.map(ComponentFacts::conditionReason).orElse(""));
    model.put("scrapped", part.facts().condition() == Condition.SCRAPPED);
    model.put("facts", facts.map(f -> FactLines.of(part.kind(), f, codes)).orElse(Map.of()));
    model.put("family", facts.map(f -> codes.get(FactRows.number(f.family()))).orElse(null));
    model.put("zone", zone.getId());
    model.put("now", here.stream().map(stay -> stay(stay, zone)).toList());
    model.put("story", story.stream().map(s -> stay(s, s.zone())).toList());
    model.put("said", history.of(said(sql, id, viewpoint)));
    model.put("since", SiteMoment.shown(register.beliefs(sql, id).get(0).span().from(), zone));
  }

  private Optional<ComponentFacts> facts(DSLContext sql, ComponentId id, Looking look) {
    Viewpoint viewpoint =
        look.past() ? look.viewpoint() : new Viewpoint(Span.OPEN, look.viewpoint().known());
    return register.belief(sql, id, viewpoint).map(Belief::facts);
  }

  private List<Belief> said(DSLContext sql, ComponentId id, Viewpoint viewpoint) {
    Long entry = viewpoint.known();
    return entry == null ? register.history(sql, id) : register.history(sql, id, entry);
  }

  /** As it is kept; of the past, as condition and stays of then say. */
  private static String state(
      Component part, Optional<ComponentFacts> facts, List<Whereabouts> here, Looking look) {
    if (!look.past()) {
      return part.state().word();
    }
    if (facts.isEmpty()) {
      return PartWords.NOT_KNOWN;
    }
    return switch (facts.get().condition()) {
      case SCRAPPED -> PartState.SCRAPPED.word();
      case QUARANTINED -> PartState.QUARANTINED.word();
      case USABLE -> (here.isEmpty() ? PartState.IN_STOCK : PartState.FITTED).word();
    };
  }

  /** Panels know the present only; they are left out where the past is looked at. */
  private void fillPanels(
      DSLContext sql, ComponentId id, UnitsShown units, Looking look, Map<String, Object> model) {
    List<PartPanel> shown = look.past() ? List.of() : panels;
    model.put(
        "panels",
        shown.stream().map(p -> new PanelShown(p.template(), p.model(sql, id, units))).toList());
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
