package loopwright.loop;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.InstantSource;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.matching.PartView;
import loopwright.matching.Verdict;
import loopwright.plant.Plant;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Survey and assembly: parts are chosen by serial and the findings change while choosing. */
public final class ChangePages implements Pages {
  private static final int PROPOSALS = 12;

  private final Database database;
  private final Page page;
  private final Plant plant;
  private final PartFacts parts;
  private final Judging judging;
  private final Configuration configuration;
  private final InstantSource clock;

  public ChangePages(
      Database database,
      Page page,
      Plant plant,
      PartFacts parts,
      Judging judging,
      Configuration configuration,
      InstantSource clock) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.parts = parts;
    this.judging = judging;
    this.configuration = configuration;
    this.clock = clock;
  }

  /** The two ways in which people change what is recorded as fitted. */
  enum Way {
    SURVEY(
        "survey",
        "Survey",
        "What was found fitted. It is recorded whatever it is, and judged.",
        "Note",
        "Record what was found"),
    ASSEMBLY(
        "assembly",
        "Assembly",
        "What is going to be left fitted. It is recorded only if it matches; otherwise you are told what"
            + " to fit instead.",
        "Why it is changed",
        "Record as left fitted");

    private final String word;
    private final String title;
    private final String explains;
    private final String reasonLabel;
    private final String button;

    Way(String word, String title, String explains, String reasonLabel, String button) {
      this.word = word;
      this.title = title;
      this.explains = explains;
      this.reasonLabel = reasonLabel;
      this.button = button;
    }
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/choices", Permission.RECORD, this::choices);
    for (Way way : Way.values()) {
      String path = "/loops/{tag}/" + way.word;
      routes.get(path, Permission.RECORD, http -> open(http, way));
      routes.get(path + "/judged", Permission.RECORD, http -> judged(http, way));
      routes.post(path, Permission.RECORD, http -> record(http, way));
    }
  }

  record SlotLine(String field, String label, String hint, String now) {}

  record Change(
      String tag,
      String title,
      String explains,
      String href,
      String loopHref,
      String zone,
      String reasonLabel,
      String button,
      List<SlotLine> slots) {}

  /**
   * @param askHref where one asks for a concession for these parts; null where nothing is refused
   */
  record Judged(
      String verdict,
      String drawing,
      List<Shown.Row> findings,
      List<OnTheShelf.Instead> instead,
      @Nullable String askHref) {}

  record Choices(String id, List<PartFacts.Choice> parts) {}

  private Opened opened(DSLContext sql, String tag) {
    return Opened.read(sql, plant, parts, configuration, clock.instant(), tag);
  }

  private void open(Context http, Way way) {
    Opened opened = database.read(sql -> opened(sql, http.pathParam("tag")));
    Form form =
        ChangeForm.filled(opened.chain(), opened.texts(), clock.instant(), opened.zone())
            .at(opened.version());
    takeAsked(form, Form.fromQuery(http));
    show(http, 200, way, opened, form);
  }

  /** Parts in the address, of a scan for instance, stand in place of what is on record. */
  private static void takeAsked(Form form, Form asked) {
    Proposed.fields().stream()
        .filter(field -> !asked.every(field).isEmpty())
        .forEach(field -> form.put(field, asked.typed(field)));
  }

  private void show(Context http, int status, Way way, Opened opened, Form form) {
    Map<String, Object> model = new HashMap<>();
    model.put("form", form);
    model.put("change", change(way, opened));
    model.put("judged", judgedNow(opened, form).orElse(null));
    model.put("wrong", List.of());
    putTaken(model, way, opened, form);
    page.show(http, status, "loop/change", model);
  }

  /** What the chain as typed takes out, and where it may go. */
  private void putTaken(Map<String, Object> model, Way way, Opened opened, Form form) {
    model.put("form", form);
    model.put("taken", taken(opened, form));
    model.put("fates", TakenOut.choices(way == Way.SURVEY));
  }

  private List<TakenOut> taken(Opened opened, Form form) {
    return database.read(
        sql ->
            new ChangeForm(form, parts)
                .chain(sql, opened.chain())
                .map(chain -> TakenOut.of(opened.chain(), chain, opened.views()))
                .orElse(List.of()));
  }

  private static Change change(Way way, Opened opened) {
    String href = opened.href();
    return new Change(
        opened.point().tag(),
        way.title,
        way.explains,
        href + "/" + way.word,
        href,
        opened.zone().getId(),
        way.reasonLabel,
        way.button,
        ChangeForm.slots(opened.chain()).stream().map(slot -> line(slot, opened)).toList());
  }

  private static SlotLine line(Slot slot, Opened opened) {
    String now =
        opened.chain().stream()
            .filter(placed -> placed.slot() == slot)
            .map(placed -> words(placed.content(), opened.views()))
            .findFirst()
            .orElse(slot.isPath() ? "none fitted" : "not recorded");
    String hint =
        slot.isPath()
            ? "empty: none fitted; ? : something is, not readable"
            : "empty or ? : can't be read";
    return new SlotLine(slot.word(), Text.capital(Words.usual(slot)), hint, now);
  }

  private static String words(Content content, Map<Long, PartView> views) {
    if (content instanceof Content.Part part) {
      PartView view = views.get(part.number());
      String channel = part.channel() == 1 ? "" : " #" + part.channel();
      return view == null ? "?" : Proposed.label(view) + channel + " " + Shown.about(view);
    }
    return content instanceof Content.None ? "none fitted" : "not known";
  }

  private Optional<Judged> judgedNow(Opened opened, Form form) {
    return database.read(
        sql ->
            new ChangeForm(form, parts)
                .chain(sql, opened.chain())
                .map(chain -> judged(sql, opened, chain, form)));
  }

  private Judged judged(DSLContext sql, Opened opened, Chain chain, Form form) {
    Judging.Judged judged =
        judging.judge(
            sql,
            new Judging.Subject(opened.number(), opened.point().tag()),
            chain,
            clock.instant());
    return new Judged(
        judged.judgement().verdict().word(),
        Drawing.of(judged),
        Shown.rows(judged.judgement()),
        OnTheShelf.instead(sql, parts, judged),
        judged.judgement().verdict() == Verdict.REFUSED
            ? opened.href() + "/concession?" + query(form)
            : null);
  }

  private static String query(Form form) {
    return ChangeForm.SLOTS.stream()
        .filter(slot -> !form.typed(slot.word()).isBlank())
        .map(
            slot ->
                slot.word()
                    + "="
                    + URLEncoder.encode(form.typed(slot.word()), StandardCharsets.UTF_8))
        .collect(Collectors.joining("&"));
  }

  private void judged(Context http, Way way) {
    Opened opened = database.read(sql -> opened(sql, http.pathParam("tag")));
    Form form = Form.fromQuery(http);
    Map<String, Object> model = new HashMap<>();
    model.put("judged", judgedNow(opened, form).orElse(null));
    model.put("wrong", List.copyOf(form.complaints().values()));
    putTaken(model, way, opened, form);
    page.part(http, 200, "loop/judged", "answer", model);
  }

  private void choices(Context http) {
    String field = String.valueOf(http.queryParam("slot"));
    Slot slot = Slot.named(field).orElseThrow(NotFoundResponse::new);
    String typed = Form.fromQuery(http).typed(field).strip();
    List<PartFacts.Choice> proposals =
        database.read(sql -> parts.proposals(sql, TypedPart.place(slot), typed, null, PROPOSALS));
    page.part(
        http,
        200,
        "loop/judged",
        "choices",
        Map.of("choices", new Choices(field + "-choices", proposals)));
  }

  private void record(Context http, Way way) {
    Form form = Form.from(http);
    Opened opened = database.read(sql -> opened(sql, http.pathParam("tag")));
    if (form.stale(opened.version())) {
      showChanged(http, way, form);
      return;
    }
    ChangeForm typed = new ChangeForm(form, parts);
    Optional<Chain> chain = database.read(sql -> typed.chain(sql, opened.chain()));
    Optional<Instant> at = TypedMoment.read(form, opened.zone(), clock.instant());
    String reason = form.text("reason", 2000);
    if (chain.isPresent() && at.isPresent()) {
      database.read(sql -> typed.complainOfUnborn(sql, chain.get(), at.get(), opened.zone()));
    }
    List<PutAway> away = TakenOut.read(form, taken(opened, form), way == Way.SURVEY);
    if (!form.ok() || chain.isEmpty() || at.isEmpty()) {
      show(http, 422, way, opened, form);
      return;
    }
    try {
      Judging.Judged judged =
          record(http, way, form, opened, new Told(chain.get(), at.get(), reason, away));
      page.go(
          http,
          opened.href(),
          "%s recorded; the loop is judged: %s."
              .formatted(way.title, judged.judgement().verdict().word()));
    } catch (Refused refused) {
      if (refused.problem() == LoopProblem.CHANGED_MEANWHILE) {
        showChanged(http, way, form);
        return;
      }
      form.complain(refused);
      if (refused.problem() == LoopProblem.DOES_NOT_MATCH) {
        rememberRefused(http, opened, chain.get(), at.get(), reason);
      }
      Opened now = database.read(sql -> opened(sql, http.pathParam("tag")));
      show(http, 422, way, now, form.at(now.version()));
    }
  }

  private void rememberRefused(
      Context http, Opened opened, Chain chain, Instant at, String reason) {
    database.write(
        act(Actor.of(http), WithoutLeave.NOT_RECORDED, reason),
        tx -> {
          configuration.rememberRefused(tx, opened.number(), chain, at, reason);
          return true;
        });
  }

  private void showChanged(Context http, Way way, Form form) {
    Opened now = database.read(sql -> opened(sql, http.pathParam("tag")));
    form.complain(new Refused(LoopProblem.CHANGED_MEANWHILE, now.lastChange()));
    show(http, 409, way, now, form.at(now.version()));
  }

  /** What the form told. */
  private record Told(Chain chain, Instant at, String reason, List<PutAway> away) {}

  private Judging.Judged record(Context http, Way way, Form form, Opened opened, Told told) {
    return database.write(
        act(Actor.of(http), way.word, told.reason()),
        tx -> {
          configuration.holdStill(tx, opened.number(), told.chain());
          Opened now = opened(tx.sql(), opened.point().tag());
          if (form.stale(now.version())) {
            throw new Refused(LoopProblem.CHANGED_MEANWHILE, now.lastChange());
          }
          Judging.Judged judged = record(tx, way, opened.number(), told);
          told.away().forEach(part -> parts.putAway(tx, part, told.at()));
          return judged;
        });
  }

  private Judging.Judged record(Tx tx, Way way, long point, Told told) {
    return way == Way.SURVEY
        ? configuration.survey(tx, point, told.chain(), told.at(), told.reason())
        : configuration.assembly(tx, point, told.chain(), told.at(), told.reason());
  }

  private static Act act(Actor actor, String what, String reason) {
    return new Act(Long.valueOf(actor.id()), actor.name(), actor.role().word(), what, reason);
  }
}
