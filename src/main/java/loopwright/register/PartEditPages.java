package loopwright.register;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.DbProblem;
import loopwright.db.Tx;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.time.SiteMoment;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jspecify.annotations.Nullable;

/** Registering a part, correcting its name, saying what is so since when, and its condition. */
final class PartEditPages implements Pages {
  private static final Map<String, String> WHENS = new LinkedHashMap<>();

  static {
    WHENS.put("day", "since a day: the part was changed");
    WHENS.put("always", "always: the record was wrong");
  }

  private final Database database;
  private final Page page;
  private final Register register;
  private final FamilyBook families;
  private final InstantSource clock;

  PartEditPages(
      Database database, Page page, Register register, FamilyBook families, InstantSource clock) {
    this.database = database;
    this.page = page;
    this.register = register;
    this.families = families;
    this.clock = clock;
  }

  /** Three ways to say whether a part may be used. */
  enum Step {
    QUARANTINE("quarantine", "Quarantine", "may not be used until it is returned to stock"),
    SCRAP("scrap", "Scrap", "is no more; its record stays"),
    STOCK("stock", "Return to stock", "may be used again and lies on this shelf");

    final String word;
    final String title;
    final String explains;

    Step(String word, String title, String explains) {
      this.word = word;
      this.title = title;
      this.explains = explains;
    }
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/parts/new", Permission.RECORD, this::askNew);
    routes.post("/parts/new", Permission.RECORD, this::add);
    routes.get("/parts/{id}/details", Permission.RECORD, http -> ask(http, "register/details"));
    routes.post("/parts/{id}/details", Permission.RECORD, this::changeDetails);
    routes.get("/parts/{id}/facts", Permission.RECORD, http -> ask(http, "register/facts"));
    routes.post("/parts/{id}/facts", Permission.RECORD, this::changeFacts);
    for (Step step : Step.values()) {
      String path = "/parts/{id}/" + step.word;
      routes.get(path, Permission.RECORD, http -> askStep(http, step));
      routes.post(path, Permission.RECORD, http -> take(http, step));
    }
  }

  private void askNew(Context http) {
    Form form =
        Form.fromQuery(http)
            .put("channels", "1")
            .put("from", today(clockOf(null)).toString())
            .put("reason", "Registered by hand.");
    showNew(http, 200, form);
  }

  private void add(Context http) {
    Form form = Form.from(http);
    ZoneId zone = clockOf(null);
    Optional<ComponentDetails> details = PartForm.details(form);
    Optional<ComponentFacts> facts =
        PartForm.facts(form, database.read(families::all), ComponentFacts.NOTHING_KNOWN);
    Instant from = form.read("from", text -> since(text, zone));
    String reason = form.read("reason", PartForm::reason);
    if (form.ok() && details.isPresent() && facts.isPresent()) {
      NewComponent fresh = new NewComponent(details.get(), facts.get(), from);
      Act act = People.act(Actor.of(http), "register part", reason);
      Optional<ComponentId> id =
          PartForm.attempt(form, () -> database.write(act, tx -> register.add(tx, fresh)));
      if (id.isPresent()) {
        String said = details.get().inWords() + " is registered.";
        page.go(http, "/parts/" + id.get().number(), said);
        return;
      }
    }
    showNew(http, 422, form);
  }

  private void showNew(Context http, int status, Form form) {
    Map<String, Object> model = choices(http, form);
    model.put("zone", clockOf(null).getId());
    page.show(http, status, "register/new", model);
  }

  private Map<String, Object> choices(Context http, Form form) {
    UnitsShown units = UnitsShown.of(http);
    Map<String, Object> model = new HashMap<>();
    model.put("form", form);
    model.put("kinds", PartWords.orNone("choose", PartWords.kinds()));
    model.put("evidences", PartWords.orNone("choose", PartWords.evidences()));
    model.put(
        "families",
        PartWords.orNone("not known", PartWords.families(database.read(families::all))));
    model.put("unitChoices", PartListPages.unitChoices(units));
    model.put(
        "scaleChoices", units.metric() ? List.of("mV/µm", "mV/mil") : List.of("mV/mil", "mV/µm"));
    return model;
  }

  private void ask(Context http, String template) {
    Component part = part(http);
    Form form = PartForm.of(part, family(part)).put("when", "day");
    form.put("from", today(clockOf(part.id())).toString());
    showEdit(http, 200, template, part, form);
  }

  private void showEdit(Context http, int status, String template, Component part, Form form) {
    Map<String, Object> model = choices(http, form);
    model.put("part", part);
    model.put("zone", clockOf(part.id()).getId());
    model.put("lengthName", PartWords.lengthName(part.kind()));
    model.put("whens", WHENS);
    model.put("now", Map.of());
    if (status == 409) {
      Map<Long, String> codes = database.read(families::codes);
      model.put("now", FactLines.of(part.kind(), part.facts(), codes));
    }
    page.show(http, status, template, model);
  }

  private void changeDetails(Context http) {
    Component part = part(http);
    Form form = Form.from(http);
    if (form.stale(Integer.toString(part.version()))) {
      showStale(http, "register/details", part, form);
      return;
    }
    Optional<ComponentDetails> details = PartForm.details(form);
    String reason = form.read("reason", PartForm::reason);
    if (form.ok() && details.isPresent()) {
      Consumer<Tx> work =
          tx -> register.changeDetails(tx, part.id(), part.version(), details.get());
      if (done(http, form, part, "correct part", reason, work)) {
        page.go(http, "/parts/" + part.id().number(), "Corrected.");
        return;
      }
    }
    showEdit(http, 422, "register/details", part, form);
  }

  private void changeFacts(Context http) {
    Component part = part(http);
    Form form = Form.from(http);
    if (form.stale(Integer.toString(part.version()))) {
      showStale(http, "register/facts", part, form);
      return;
    }
    Optional<ComponentFacts> typed =
        PartForm.facts(form, database.read(families::all), part.facts());
    boolean always = form.typed("when").equals("always");
    Instant from =
        always ? Instant.EPOCH : form.read("from", text -> since(text, clockOf(part.id())));
    String reason = form.read("reason", PartForm::reason);
    if (form.ok() && typed.isPresent()) {
      Consumer<Tx> work =
          tx -> {
            register.refuseStale(tx, part.id(), part.version());
            boolean changed =
                always
                    ? register.correctFacts(tx, part.id(), was -> merged(was, typed.get()))
                    : register.changeFacts(tx, part.id(), from, was -> merged(was, typed.get()));
            refuseNothing(part, changed);
          };
      if (done(http, form, part, "change facts", reason, work)) {
        page.go(http, "/parts/" + part.id().number(), "Recorded.");
        return;
      }
    }
    showEdit(http, 422, "register/facts", part, form);
  }

  /** The form speaks of everything but condition and settings. */
  private static ComponentFacts merged(ComponentFacts was, ComponentFacts typed) {
    return typed
        .withCondition(was.condition(), was.conditionReason())
        .withSettingsHash(was.settingsHash());
  }

  private static void refuseNothing(Component part, boolean changed) {
    if (!changed) {
      throw new Refused(RegisterProblem.ALREADY_SO, part.label(), "recorded so");
    }
  }

  private void askStep(Context http, Step step) {
    Component part = part(http);
    showStep(http, 200, step, part, PartForm.of(part, null));
  }

  private void take(Context http, Step step) {
    Component part = part(http);
    Form form = Form.from(http);
    if (form.stale(Integer.toString(part.version()))) {
      complainStale(part, form);
      showStep(http, 409, step, part, form.at(Integer.toString(part.version())));
      return;
    }
    String reason = form.read("reason", PartForm::reason);
    Shelf shelf = PartForm.shelf(form);
    if (form.ok()) {
      Consumer<Tx> work =
          tx -> {
            register.refuseStale(tx, part.id(), part.version());
            take(tx, step, part.id(), reason, shelf);
          };
      if (done(http, form, part, step.word, reason, work)) {
        page.go(http, "/parts/" + part.id().number(), "Recorded.");
        return;
      }
    }
    showStep(http, 422, step, part, form);
  }

  private void take(Tx tx, Step step, ComponentId id, String reason, Shelf shelf) {
    switch (step) {
      case QUARANTINE -> register.quarantine(tx, id, reason);
      case SCRAP -> register.scrap(tx, id, reason);
      case STOCK -> register.returnToStock(tx, id, shelf);
    }
  }

  private void showStep(Context http, int status, Step step, Component part, Form form) {
    Map<String, Object> model = new HashMap<>();
    model.put("form", form);
    model.put("part", part);
    model.put("word", step.word);
    model.put("title", step.title);
    model.put("explains", step.explains);
    model.put("shelf", step == Step.STOCK);
    model.put("fitted", database.read(sql -> register.now(sql, part.id())));
    page.show(http, status, "register/condition", model);
  }

  private boolean done(
      Context http, Form form, Component part, String what, String reason, Consumer<Tx> work) {
    Act act = People.act(Actor.of(http), what, reason);
    try {
      database.write(
          act,
          tx -> {
            work.accept(tx);
            return part;
          });
      return true;
    } catch (Refused refused) {
      PartForm.complain(form, refused);
      return false;
    }
  }

  private void showStale(Context http, String template, Component part, Form form) {
    complainStale(part, form);
    showEdit(http, 409, template, part, form.at(Integer.toString(part.version())));
  }

  private void complainStale(Component part, Form form) {
    ChangeNote last = database.read(sql -> register.lastChange(sql, part.id()));
    form.complain(
        Refused.say(DbProblem.STALE)
            + " The last change was by %s on %s: %s"
                .formatted(
                    last.by(), SiteMoment.shown(last.at(), clockOf(part.id())), last.reason()));
  }

  private Component part(Context http) {
    ComponentId id = PartPages.id(http);
    return database.read(sql -> register.component(sql, id)).orElseThrow(NotFoundResponse::new);
  }

  private @Nullable String family(Component part) {
    Long number = FactRows.number(part.facts().family());
    return number == null ? null : database.read(families::codes).get(number);
  }

  private ZoneId clockOf(@Nullable ComponentId id) {
    return database.read(sql -> register.clock(sql, id));
  }

  private LocalDate today(ZoneId zone) {
    return SiteMoment.day(clock.instant(), zone);
  }

  /** A bare day is its start at the site; today's start is never to come. */
  private Instant since(String typed, ZoneId zone) {
    Instant from = SiteMoment.startOf(PartForm.day(typed), zone);
    if (from.isAfter(clock.instant())) {
      throw new Refused(RegisterProblem.IN_FUTURE, typed);
    }
    return from;
  }
}
