package loopwright.lengthlaw;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import loopwright.cause.LawLearning;
import loopwright.cause.LengthLaw;
import loopwright.cause.Told;
import loopwright.db.Database;
import loopwright.lengthlaw.LawStore.Kept;
import loopwright.matching.Evidence;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.register.Family;
import loopwright.register.FamilyBook;
import loopwright.register.FamilyPanel;
import loopwright.units.Numbers;
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

/** The length law of a family: what it is, what taught it, and what each piece of evidence does. */
public final class LawPages implements Pages, FamilyPanel {
  private static final int LONGEST = 2000;
  private static final double COVERAGE = 2;

  private final Database database;
  private final Page page;
  private final FamilyBook families;
  private final LengthLaws laws;
  private final InstantSource clock;

  public LawPages(
      Database database, Page page, FamilyBook families, LengthLaws laws, InstantSource clock) {
    this.database = database;
    this.page = page;
    this.families = families;
    this.laws = laws;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/length-law/{code}", Permission.READ, http -> show(http, 200, asked(http)));
    routes.post("/length-law/{code}", Permission.DECIDE, this::teach);
    routes.post("/length-law/{code}/withdraw", Permission.DECIDE, this::withdraw);
  }

  /**
   * @param without what the law would be without it; empty where it doesn't count
   */
  record Row(
      long id,
      String day,
      String tag,
      String lengths,
      String before,
      String seen,
      String words,
      String who,
      String without,
      String withdrawn) {}

  record LawLine(String name, String law, String effect) {}

  /** What the form holds when it is opened: the numbers of a diagnosis, where it comes from one. */
  private static Form asked(Context http) {
    Form form = Form.fromQuery(http);
    UnitsShown units = UnitsShown.of(http);
    if (form.typed("sensitivity-unit").isEmpty()) {
      Unit slope = units.metric() ? Unit.MILLIVOLT_PER_MICROMETRE : Unit.MILLIVOLT_PER_MIL;
      form.put("sensitivity-unit", slope.symbol()).put("baseline-sensitivity-unit", slope.symbol());
      form.put("baseline-gap-unit", (units.metric() ? Unit.MICROMETRE : Unit.MIL).symbol());
    }
    return form;
  }

  private Family family(DSLContext sql, Context http) {
    return families.named(sql, http.pathParam("code")).orElseThrow(NotFoundResponse::new);
  }

  private LocalDate today() {
    return LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
  }

  private void show(Context http, int status, Form form) {
    Map<String, Object> model = new HashMap<>();
    database.read(
        sql -> {
          Family family = family(sql, http);
          List<Kept> all = laws.of(sql, family);
          String code = family.details().code();
          model.put("code", code);
          model.put("href", href(code));
          model.put("familyHref", "/families/" + PathSegment.of(code));
          List<Kept> counting = all.stream().filter(Kept::counts).toList();
          LawLearning learning = LengthLaws.learning(counting);
          model.put("laws", lines(learning.learnt()));
          model.put(
              "rows",
              all.stream().map(kept -> row(kept, counting.indexOf(kept), learning)).toList());
          return family;
        });
    model.put("form", form);
    model.put("known", known());
    model.put("gapUnits", TypedEvidence.GAPS.stream().map(Unit::symbol).toList());
    model.put("sensitivityUnits", TypedEvidence.SENSITIVITIES.stream().map(Unit::symbol).toList());
    page.show(http, status, "lengthlaw/law", model);
  }

  private static String href(String code) {
    return "/length-law/" + PathSegment.of(code);
  }

  private static Map<String, String> known() {
    Map<String, String> known = new LinkedHashMap<>();
    known.put("", "choose");
    Arrays.stream(Evidence.values())
        .filter(Evidence::proves)
        .forEach(each -> known.put(each.name(), each.phrase()));
    return known;
  }

  private static List<LawLine> lines(LengthLaw now) {
    return List.of(line("before any evidence", LengthLaw.unproved()), line("now", now));
  }

  private static LawLine line(String name, LengthLaw law) {
    return new LawLine(name, words(law), effect(law));
  }

  private static String words(LengthLaw law) {
    return String.format(
            Locale.ROOT,
            "n = %.2f ± %.2f, c = %.2f ± %.2f per mm",
            law.n(),
            law.nUncertainty(),
            law.c(),
            law.cUncertainty())
        .replace('-', '\u2212');
  }

  /** Half a metre too much on 5 m: the interval that one reckons with. */
  private static String effect(LengthLaw law) {
    double lnRatio = Math.log(5 / 5.5);
    return "slope %s (%s to %s)"
        .formatted(
            percent(law.n() * lnRatio),
            percent((law.n() - COVERAGE * law.nUncertainty()) * lnRatio),
            percent((law.n() + COVERAGE * law.nUncertainty()) * lnRatio));
  }

  private static String percent(double lnFactor) {
    return String.format(Locale.ROOT, "%+.1f %%", 100 * Math.expm1(lnFactor))
        .replace('-', '\u2212');
  }

  /**
   * @param counting its place among the evidence that counts; negative where it doesn't
   */
  private static Row row(Kept kept, int counting, LawLearning learning) {
    Taught taught = kept.taught();
    return new Row(
        kept.id(),
        taught.foundOn().toString(),
        taught.tag(),
        "%s m on %s m, %s"
            .formatted(
                Numbers.plain(taught.fitted().metres()),
                Numbers.plain(taught.system().metres()),
                taught.knownBy().phrase()),
        Told.volts(taught.before()) + ", " + Told.sensitivity(taught.sensitivityBefore()),
        Told.volts(taught.volts()) + ", " + Told.sensitivity(taught.sensitivity()),
        taught.words(),
        kept.who(),
        counting < 0 ? "" : "without it: " + words(learning.without(counting)),
        kept.withdrawn());
  }

  private void teach(Context http) {
    Form form = Form.from(http);
    Optional<Taught> taught = new TypedEvidence(form, today()).read();
    if (taught.isEmpty()) {
      show(http, 422, form);
      return;
    }
    Actor actor = Actor.of(http);
    Family family = database.read(sql -> family(sql, http));
    database.write(
        People.act(actor, "teach length law", taught.get().words()),
        tx -> {
          laws.teach(tx, family, taught.get());
          return family;
        });
    page.go(http, href(family.details().code()), "It counts from now on.");
  }

  private void withdraw(Context http) {
    Form form = Form.from(http);
    String why = form.read("why", text -> Text.needed("why it is withdrawn", text, LONGEST));
    Long evidence = form.read("evidence", text -> Long.valueOf(text.strip()));
    if (!form.ok()) {
      show(http, 422, form);
      return;
    }
    Actor actor = Actor.of(http);
    Family family = database.read(sql -> family(sql, http));
    try {
      database.write(
          People.act(actor, "withdraw length evidence", why),
          tx -> {
            laws.withdraw(tx, family, evidence, why);
            return family;
          });
      page.go(http, href(family.details().code()), "Withdrawn; it stays readable.");
    } catch (Refused refused) {
      form.complain(refused);
      show(http, 422, form);
    }
  }

  @Override
  public String template() {
    return "lengthlaw/panel";
  }

  @Override
  public Object model(DSLContext sql, Family family, UnitsShown units) {
    return new LawLine(
        href(family.details().code()), words(laws.law(sql, family.details().code())), "");
  }
}
