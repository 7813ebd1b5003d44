package loopwright.family;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import loopwright.alloy.AlloyBook;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.DbProblem;
import loopwright.db.Tx;
import loopwright.people.People;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.register.Family;
import loopwright.register.FamilyBook;
import loopwright.register.FamilyDetails;
import loopwright.register.FamilyPair;
import loopwright.register.ToleranceProfiles;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jspecify.annotations.Nullable;

/** Families added and changed by engineers, pairs of them, and two versions held together. */
public final class FamilyEditPages implements Pages {
  private static final Map<String, String> CABLE_USES = new LinkedHashMap<>();
  private static final Map<String, String> OUTPUTS = new LinkedHashMap<>();

  static {
    CABLE_USES.put("required", "every system has one");
    CABLE_USES.put("optional", "with or without");
    CABLE_USES.put("none", "none: the lead reaches the driver");
    OUTPUTS.put("V", "voltage");
    OUTPUTS.put("mA", "current (mA)");
  }

  private final Database database;
  private final Page page;
  private final FamilyBook families;
  private final FamilyVersions versions;
  private final ToleranceProfiles profiles;
  private final AlloyBook alloys;

  public FamilyEditPages(
      Database database,
      Page page,
      FamilyBook families,
      FamilyVersions versions,
      ToleranceProfiles profiles,
      AlloyBook alloys) {
    this.database = database;
    this.page = page;
    this.families = families;
    this.versions = versions;
    this.profiles = profiles;
    this.alloys = alloys;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/new-family", Permission.DECIDE, this::askNew);
    routes.post("/new-family", Permission.DECIDE, this::add);
    routes.get("/families/{code}/edit", Permission.DECIDE, this::ask);
    routes.post("/families/{code}/edit", Permission.DECIDE, this::change);
    routes.post("/families/{code}/pair", Permission.DECIDE, this::pair);
    routes.post("/families/{code}/unpair", Permission.DECIDE, this::unpair);
    routes.get("/families/{code}/versions", Permission.READ, this::compare);
  }

  private void askNew(Context http) {
    Form form = Form.blank().put("tolerance", "0.05").put("cable-use", "required");
    show(http, 200, null, form);
  }

  private void add(Context http) {
    Form form = Form.from(http);
    Optional<FamilyDetails> details = details(form, null);
    String reason = form.read("reason", FamilyEditPages::reason);
    if (form.ok() && details.isPresent()) {
      Consumer<Tx> work = tx -> families.add(tx, details.get());
      if (done(http, form, "add family", reason, work)) {
        page.go(http, address(details.get().code()), "The family is registered.");
        return;
      }
    }
    show(http, 422, null, form);
  }

  private void ask(Context http) {
    Family family = family(http);
    show(http, 200, family, FamilyForm.of(family.details(), family.version()));
  }

  private void change(Context http) {
    Family family = family(http);
    Form form = Form.from(http);
    if (form.stale(Integer.toString(family.version()))) {
      form.complain(Refused.say(DbProblem.STALE) + last(family));
      show(http, 409, family, form.at(Integer.toString(family.version())));
      return;
    }
    Optional<FamilyDetails> details = details(form, family.details());
    String reason = form.read("reason", FamilyEditPages::reason);
    if (form.ok() && details.isPresent()) {
      if (details.get().equals(family.details())) {
        form.complain(new Refused(FamilyProblem.NOTHING_NEW));
      } else {
        Consumer<Tx> work = tx -> families.change(tx, family.id(), family.version(), details.get());
        if (done(http, form, "change family", reason, work)) {
          page.go(
              http,
              address(details.get().code()),
              "The family is changed; its loops are judged anew.");
          return;
        }
      }
    }
    show(http, 422, family, form);
  }

  private Optional<FamilyDetails> details(Form form, @Nullable FamilyDetails was) {
    return new FamilyForm(form, database.read(alloys::asJudged), was).read();
  }

  /** Who came in between, and what that change was. */
  private String last(Family family) {
    List<FamilyVersion> all = database.read(sql -> versions.of(sql, family.id()));
    if (all.isEmpty()) {
      return "";
    }
    FamilyVersion newest = all.get(0);
    Map<String, String> before = all.size() > 1 ? all.get(1).words() : Map.of();
    return " Version %s by %s: %s. It changed %s."
        .formatted(
            newest.number(),
            newest.made().by(),
            newest.made().reason(),
            FamilyVersion.between(before, newest.words()));
  }

  private boolean done(Context http, Form form, String what, String reason, Consumer<Tx> work) {
    Act act = People.act(Actor.of(http), what, reason);
    try {
      database.write(
          act,
          tx -> {
            work.accept(tx);
            return act;
          });
      return true;
    } catch (Refused refused) {
      form.complain(refused);
      return false;
    }
  }

  private void show(Context http, int status, @Nullable Family family, Form form) {
    UnitsShown units = UnitsShown.of(http);
    Map<String, Object> model = new HashMap<>();
    model.put("form", form);
    model.put("title", family == null ? "New family" : "Change family " + family.code());
    model.put("action", family == null ? "/new-family" : address(family.code()) + "/edit");
    model.put("back", family == null ? "/families" : address(family.code()));
    model.put("cableUses", CABLE_USES);
    model.put("outputs", OUTPUTS);
    model.put("profiles", profiles());
    model.put("lengthUnits", units.metric() ? List.of("m", "ft") : List.of("ft", "m"));
    model.put("gapUnits", List.of("µm", "mil"));
    model.put("scaleUnits", List.of("mV/mil", "mV/µm"));
    model.put(
        "now",
        family != null && status == 409 ? FamilyContent.of(family.details(), Map.of()) : Map.of());
    page.show(http, status, "family/edit", model);
  }

  private Map<String, String> profiles() {
    Map<String, String> choices = new LinkedHashMap<>();
    choices.put("", "none chosen");
    database
        .read(profiles::newest)
        .forEach(stored -> choices.put(stored.profile().code(), stored.profile().name()));
    return choices;
  }

  private void pair(Context http) {
    Family family = family(http);
    Form form = Form.from(http);
    String by = form.text("said-by", 200);
    Optional<Family> other =
        form.read("other", code -> database.read(sql -> families.named(sql, code)));
    if (form.ok() && other.isEmpty()) {
      form.complain(
          Refused.say(loopwright.register.RegisterProblem.UNKNOWN_FAMILY, form.typed("other")));
    }
    Consumer<Tx> work = tx -> families.pair(tx, family.id(), other.orElseThrow().id(), by);
    String reason = "Said by " + by;
    if (form.ok() && done(http, form, "pair families", reason, work)) {
      page.go(http, address(family.code()), "Entered as interchangeable.");
      return;
    }
    showPair(http, family, form);
  }

  private void showPair(Context http, Family family, Form form) {
    Map<String, Object> model = new HashMap<>();
    model.put("form", form);
    model.put("code", family.code());
    model.put("href", address(family.code()));
    model.put("others", others(database.read(families::all), family));
    page.show(http, 422, "family/pair", model);
  }

  /** Every family but that one, by code. */
  static Map<String, String> others(List<Family> all, Family family) {
    Map<String, String> others = new LinkedHashMap<>();
    all.stream()
        .filter(one -> !one.id().equals(family.id()))
        .forEach(one -> others.put(one.code(), one.code() + " · " + one.name()));
    return others;
  }

  private void unpair(Context http) {
    Family family = family(http);
    Form form = Form.from(http);
    String other = form.typed("other");
    String reason = form.read("reason", FamilyEditPages::reason);
    Function<Tx, FamilyPair> find =
        tx ->
            families.pairs(tx.sql()).stream()
                .filter(pair -> joins(tx, pair, family, other))
                .findFirst()
                .orElseThrow(() -> new Refused(FamilyProblem.NO_PAIR, family.code(), other));
    if (form.ok()
        && done(http, form, "unpair families", reason, tx -> families.unpair(tx, find.apply(tx)))) {
      page.go(http, address(family.code()), "The pair is taken out.");
      return;
    }
    showPair(http, family, form);
  }

  private boolean joins(Tx tx, FamilyPair pair, Family family, String other) {
    return families
        .named(tx.sql(), other)
        .map(Family::id)
        .filter(
            id ->
                pair.first().equals(family.id()) && pair.second().equals(id)
                    || pair.first().equals(id) && pair.second().equals(family.id()))
        .isPresent();
  }

  private void compare(Context http) {
    Family family = family(http);
    List<FamilyVersion> all = database.read(sql -> versions.of(sql, family.id()));
    FamilyVersion then = version(all, http.queryParam("from"));
    FamilyVersion now = version(all, http.queryParam("to"));
    Map<String, Object> model = new HashMap<>();
    model.put("code", family.code());
    model.put("href", address(family.code()));
    model.put("then", then);
    model.put("now", now);
    model.put("changed", FamilyVersion.between(then.words(), now.words()));
    page.show(http, "family/compare", model);
  }

  private static FamilyVersion version(List<FamilyVersion> all, @Nullable String number) {
    return all.stream()
        .filter(one -> Integer.toString(one.number()).equals(number))
        .findFirst()
        .orElseThrow(NotFoundResponse::new);
  }

  private Family family(Context http) {
    String code = http.pathParam("code");
    return database.read(sql -> families.named(sql, code)).orElseThrow(NotFoundResponse::new);
  }

  private static String address(String code) {
    return "/families/" + PathSegment.of(code);
  }

  private static String reason(String typed) {
    return Text.needed("the reason", typed, 400);
  }
}
