package loopwright.symptom;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import loopwright.cause.CauseDocument;
import loopwright.cause.CauseProblem;
import loopwright.cause.TappingPoint;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.lengthlaw.LengthLaws;
import loopwright.loop.LoopPanel;
import loopwright.loop.PartFacts;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.time.Viewpoint;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.Unit;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/**
 * Two numbers in, likely causes out. What was typed stands in the address: an answer can be sent to
 * a colleague, and nothing is stored unless somebody keeps the likeliest cause as a suspicion.
 */
public final class CausePages implements Pages, LoopPanel {
  private final Database database;
  private final Page page;
  private final LoopsOnRecord loops;
  private final PartFacts parts;
  private final LengthLaws laws;
  private final CauseWeights weights;
  private final Suspicions suspicions;

  public CausePages(
      Database database,
      Page page,
      LoopsOnRecord loops,
      PartFacts parts,
      LengthLaws laws,
      CauseWeights weights,
      Suspicions suspicions) {
    this.database = database;
    this.page = page;
    this.loops = loops;
    this.parts = parts;
    this.laws = laws;
    this.weights = weights;
    this.suspicions = suspicions;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/cause", Permission.READ, this::show);
    routes.get("/api/cause", Permission.READ, this::answer);
    routes.post("/cause/suspicions", Permission.RECORD, this::keep);
    routes.post("/cause/suspicions/settle", Permission.RECORD, this::settle);
  }

  /** What the page says of the loop. */
  record LoopLine(
      String tag, String href, String fitted, @Nullable String curve, @Nullable String curveHref) {}

  private void show(Context http) {
    show(http, 200, Form.blank());
  }

  /**
   * @param said about suspicions
   */
  private void show(Context http, int status, Form said) {
    Map<String, Object> model = new HashMap<>();
    int found = database.read(sql -> fill(sql, http, model));
    model.put("said", said);
    page.show(http, Math.max(status, found), "symptom/cause", model);
  }

  /** A suspicion that nobody settled. */
  record SuspicionLine(long id, String words, String who, String href) {}

  private List<SuspicionLine> lines(DSLContext sql, long point) {
    return suspicions.standing(sql, List.of(point)).stream()
        .map(one -> new SuspicionLine(one.id(), one.inWords(), one.who(), one.href()))
        .toList();
  }

  /** Works the answer out anew from what the address holds: nobody sends a probability in. */
  private void keep(Context http) {
    Form said = Form.from(http);
    String note = said.read("note", text -> Text.needed("why it is kept", text, 2000));
    Form asked = Form.fromQuery(http);
    Optional<LoopOnRecord> loop = database.read(sql -> loop(sql, asked.typed("loop")));
    Optional<TypedSymptom.Found> found = database.read(sql -> typed(sql, asked, loop).find());
    if (!said.ok() || found.isEmpty() || loop.isEmpty()) {
      show(http, 422, said);
      return;
    }
    write(
        http,
        said,
        People.act(Actor.of(http), "suspect cause", note),
        "Kept: outages that take its train suggest " + loop.get().tag() + ".",
        tx ->
            suspicions.keep(
                tx,
                loop.get().point().id().number(),
                found.get().diagnosis().first(),
                String.valueOf(http.queryString()),
                note));
  }

  private void settle(Context http) {
    Form said = Form.from(http);
    String reason = said.read("reason", text -> Text.needed("what came of it", text, 2000));
    String id = said.typed("suspicion");
    Optional<LoopOnRecord> loop =
        database.read(sql -> loop(sql, Form.fromQuery(http).typed("loop")));
    if (!said.ok() || loop.isEmpty() || !id.matches("\\d{1,15}")) {
      show(http, 422, said);
      return;
    }
    write(
        http,
        said,
        People.act(Actor.of(http), "settle suspicion", reason),
        "Settled.",
        tx ->
            suspicions.withdraw(tx, loop.get().point().id().number(), Long.parseLong(id), reason));
  }

  private void write(Context http, Form said, Act act, String done, Consumer<Tx> work) {
    try {
      database.write(
          act,
          tx -> {
            work.accept(tx);
            return act;
          });
      page.go(http, "/cause?" + http.queryString(), done);
    } catch (Refused refused) {
      said.complain(refused);
      show(http, 422, said);
    }
  }

  /** The same fields as on the page, the answer as data. */
  private void answer(Context http) {
    Form form = Form.fromQuery(http);
    Optional<LoopOnRecord> loop = database.read(sql -> loop(sql, form.typed("loop")));
    TypedSymptom.Found found =
        database
            .read(sql -> typed(sql, form, loop))
            .find()
            .orElseThrow(
                () ->
                    new Refused(
                        CauseProblem.ASKED_BACK, String.join(" ", form.complaints().values())));
    http.json(CauseDocument.of(found.diagnosis(), found.lengths(), List.of()));
  }

  private int fill(DSLContext sql, Context http, Map<String, Object> model) {
    Form form = Form.fromQuery(http);
    Optional<LoopOnRecord> loop = loop(sql, form.typed("loop"));
    Optional<LoopOnRecord.LastCurve> last = loop.flatMap(LoopOnRecord::last);
    boolean asked = http.queryParamMap().containsKey("volts");
    Optional<TypedSymptom.Found> found = asked ? typed(sql, form, loop).find() : Optional.empty();
    if (!asked) {
      prefill(form, loop, UnitsShown.of(http));
    }
    model.put("form", form);
    model.put("query", http.queryString() == null ? "" : http.queryString());
    model.put(
        "suspicions", loop.map(one -> lines(sql, one.point().id().number())).orElse(List.of()));
    model.put("loop", loop.map(CausePages::line).orElse(null));
    model.put("baselines", baselines(last));
    model.put("weights", weights.now(sql).origin());
    model.put("law", laws.words(sql, family(loop)));
    model.put(
        "teach",
        found.isPresent() && !family(loop).isEmpty()
            ? "/length-law/" + PathSegment.of(family(loop)) + "?" + http.queryString()
            : null);
    model.put("gapUnits", symbols(TypedSymptom.GAPS));
    model.put("sensitivityUnits", symbols(TypedSymptom.SENSITIVITIES));
    model.put("places", places());
    model.put(
        "shown",
        found
            .map(
                each ->
                    DiagnosisShown.of(
                        each, loop.map(l -> new CulpritSearch(sql, parts, l)), UnitsShown.of(http)))
            .orElse(null));
    return form.ok() ? 200 : 422;
  }

  private Optional<LoopOnRecord> loop(DSLContext sql, String tag) {
    if (tag.isBlank()) {
      return Optional.empty();
    }
    return Optional.of(loops.tagged(sql, tag).orElseThrow(NotFoundResponse::new));
  }

  private TypedSymptom typed(DSLContext sql, Form form, Optional<LoopOnRecord> loop) {
    return new TypedSymptom(
        form, loop.flatMap(LoopOnRecord::last), laws.law(sql, family(loop)), weights.now(sql));
  }

  /** The family's code; empty where it isn't known. */
  private static String family(Optional<LoopOnRecord> loop) {
    return loop.flatMap(LoopOnRecord::family).map(family -> family.code()).orElse("");
  }

  private static void prefill(Form form, Optional<LoopOnRecord> loop, UnitsShown units) {
    Unit gap = units.metric() ? Unit.MICROMETRE : Unit.MIL;
    Unit sensitivity = units.metric() ? Unit.MILLIVOLT_PER_MICROMETRE : Unit.MILLIVOLT_PER_MIL;
    form.put("baseline-gap-unit", gap.symbol())
        .put("gap-unit", gap.symbol())
        .put("sensitivity-gap-unit", gap.symbol())
        .put("baseline-sensitivity-unit", sensitivity.symbol())
        .put("sensitivity-unit", sensitivity.symbol())
        .put("measured-at", TappingPoint.DRIVER.label());
    loop.flatMap(LoopOnRecord::systemLength)
        .ifPresent(length -> form.put("system-length", Numbers.plain(length.metres())));
    loop.flatMap(LoopOnRecord::last).ifPresent(last -> form.put("baseline", TypedSymptom.CURVE));
    loop.map(each -> each.point().details().approvedGap())
        .ifPresent(approved -> putGap(form, approved));
  }

  private static void putGap(Form form, Reported approved) {
    form.put("baseline-gap", approved.typed()).put("baseline-gap-unit", approved.unit().symbol());
  }

  private static LoopLine line(LoopOnRecord loop) {
    return new LoopLine(
        loop.tag(),
        loop.href(),
        loop.fitted().map(length -> length.inMetres() + " fitted").orElse("a length is not known")
            + loop.systemLength()
                .map(length -> ", driver tuned for " + length.inMetres())
                .orElse(", driver's length not known"),
        loop.last().map(LoopOnRecord.LastCurve::inWords).orElse(null),
        loop.last().map(last -> "/calibrations/" + last.calibrated().number()).orElse(null));
  }

  private static Map<String, String> baselines(Optional<LoopOnRecord.LastCurve> last) {
    Map<String, String> choices = new LinkedHashMap<>();
    last.ifPresent(curve -> choices.put(TypedSymptom.CURVE, "the " + curve.name()));
    choices.put(TypedSymptom.LINE, "volts and sensitivity typed here");
    return choices;
  }

  private static Map<String, String> places() {
    Map<String, String> places = new LinkedHashMap<>();
    places.put(TappingPoint.DRIVER.label(), "the driver's terminals");
    places.put(TappingPoint.BARRIER.label(), "behind the barrier");
    places.put(TappingPoint.RACK.label(), "the rack's buffered output");
    places.put(TappingPoint.MONITOR.label(), "the monitor's reading");
    return places;
  }

  private static List<String> symbols(List<Unit> units) {
    return units.stream().map(Unit::symbol).toList();
  }

  @Override
  public String template() {
    return "symptom/panel";
  }

  @Override
  public Object model(DSLContext sql, Loop loop) {
    return new Panel(
        href(loop),
        loop.viewpoint().equals(Viewpoint.LATEST) ? lines(sql, loop.point()) : List.of());
  }

  /** On the loop's page. */
  record Panel(String href, List<SuspicionLine> suspicions) {}

  @Override
  public List<Action> actions(Loop loop) {
    return List.of(new Action("Find a cause", href(loop)));
  }

  private static String href(Loop loop) {
    return "/cause?loop=" + PathSegment.of(loop.tag());
  }
}
