package loopwright.calibration;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.curve.Curve;
import loopwright.curve.CurveAnalysis;
import loopwright.curve.CurveResult;
import loopwright.db.Database;
import loopwright.loop.Combinations;
import loopwright.loop.Configuration;
import loopwright.loop.LoopPanel;
import loopwright.loop.LoopStory;
import loopwright.loop.Need;
import loopwright.people.People;
import loopwright.plant.Plant;
import loopwright.plant.SiteClocks;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.register.Component;
import loopwright.register.Register;
import loopwright.register.ToleranceProfiles;
import loopwright.standard.StandardUsed;
import loopwright.standard.Standards;
import loopwright.time.SiteMoment;
import loopwright.web.Actor;
import loopwright.web.Form;
import loopwright.web.Page;
import loopwright.web.Pages;
import loopwright.web.PathSegment;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/** Calibrations to read: the list, one record, and what a loop's page shows of them. */
public final class CalibrationPages implements Pages, LoopPanel, LoopStory, Need.Source {
  private static final int PAGE = 50;
  private static final int ON_LOOP = 12;
  private static final List<String> VERDICTS =
      List.of("conforms", "does not conform", CalibrationStore.NO_CURVE);

  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Register register;
  private final RegisteredProfiles profiles;
  private final Calibrations calibrations;
  private final Standards standards;
  private final List<RecordPanel> panels;
  private final OpenBusiness open;
  private final MeasuredSets sets;
  private final InstantSource clock;
  private final DraftStore drafts = new DraftStore();

  public CalibrationPages(
      Database database,
      Page page,
      Plant plant,
      Register register,
      Configuration configuration,
      RegisteredProfiles profiles,
      Calibrations calibrations,
      Standards standards,
      List<RecordPanel> panels,
      InstantSource clock) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.register = register;
    this.profiles = profiles;
    this.calibrations = calibrations;
    this.standards = standards;
    this.panels = List.copyOf(panels);
    this.open = new OpenBusiness(calibrations, plant);
    this.sets = new MeasuredSets(register, configuration);
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/calibrations", Permission.READ, this::list);
    routes.get("/calibrations/{number}", Permission.READ, http -> one(http, 200, Form.blank()));
    routes.post("/calibrations/{number}/supersede", Permission.RECORD, this::supersede);
  }

  record Row(
      String href,
      String number,
      String day,
      String tag,
      @Nullable String tagHref,
      String stage,
      String verdict,
      String said) {}

  record DraftLine(String tag, String href, String savedAt) {

    static DraftLine of(DraftStore.Waiting draft, String savedAt) {
      String tag = draft.tag();
      return new DraftLine(
          tag == null ? "bench set" : draft.parts() == null ? tag : tag + ", part stood in",
          CurveAddress.of(tag, draft.parts()),
          savedAt);
    }
  }

  record Chip(String label, String href, boolean on) {}

  /** A profile's version by its number. */
  record VersionChoice(long number, String words) {}

  record Part(long id, String words) {}

  /** Equipment it was made with; {@code late} when its certificate was out of date that day. */
  record MadeWith(String href, String code, String words, boolean late) {}

  /** A loop that is exactly this set now. */
  record LoopLink(String tag, String href) {}

  record Record(
      String number,
      String tag,
      @Nullable String tagHref,
      String setup,
      List<LoopLink> fittedSo,
      String stage,
      String verdict,
      String when,
      String by,
      String zero,
      String alloy,
      Conditions under,
      String outside,
      String noCurve,
      String entered,
      String analysis,
      List<Part> parts,
      List<MadeWith> madeWith,
      List<Reading> readings,
      List<String> findingsThen) {}

  /** As typed. */
  record Reading(String run, String gap, String output) {}

  record Panel(
      List<Row> rows,
      CurveResults.@Nullable Shown latest,
      @Nullable Row head,
      boolean fitted,
      String tag,
      List<String> open) {}

  private void list(Context http) {
    UnitsShown units = UnitsShown.of(http);
    String verdict = String.valueOf(http.queryParam("verdict"));
    String before = http.queryParam("before");
    List<Calibrated> found =
        database.read(
            sql ->
                calibrations.store().latest(sql, which(verdict).and(older(sql, before)), PAGE + 1));
    List<Calibrated> shown = found.size() > PAGE ? found.subList(0, PAGE) : found;
    Map<String, Object> model = new HashMap<>();
    model.put("rows", database.read(sql -> rows(sql, plant, shown, units)));
    model.put("marks", marks(shown));
    model.put("drafts", database.read(sql -> drafts(sql, Actor.of(http))));
    model.put("chips", chips(verdict));
    model.put(
        "older",
        found.size() > PAGE ? address(verdict) + "before=" + shown.get(PAGE - 1).number() : null);
    model.put("newest", before == null ? null : address(verdict));
    page.show(http, "calibration/list", model);
  }

  /** What other features have to say of each, by the record's number. */
  private Map<String, String> marks(List<Calibrated> shown) {
    Map<Long, String> byId = new HashMap<>();
    database.read(
        sql -> {
          panels.forEach(panel -> byId.putAll(panel.marks(sql, shown)));
          return byId;
        });
    return shown.stream()
        .collect(Collectors.toMap(Calibrated::number, c -> byId.getOrDefault(c.id(), "")));
  }

  private static Condition which(String verdict) {
    return VERDICTS.contains(verdict) ? CalibrationStore.verdict(verdict) : DSL.noCondition();
  }

  private Condition older(DSLContext sql, @Nullable String before) {
    if (before == null) {
      return DSL.noCondition();
    }
    Calibrated last = found(sql, before);
    return CalibrationStore.before(last.measuredAt(), last.id());
  }

  /** Curves the reader has begun to type. */
  private List<DraftLine> drafts(DSLContext sql, Actor actor) {
    List<DraftStore.Waiting> begun = drafts.of(sql, Long.parseLong(actor.id()));
    SiteClocks clocks =
        plant.clocks(
            sql, begun.stream().map(DraftStore.Waiting::point).filter(Objects::nonNull).toList());
    return begun.stream()
        .map(draft -> DraftLine.of(draft, clocks.shown(draft.savedAt(), draft.point())))
        .toList();
  }

  private static List<Chip> chips(String verdict) {
    List<Chip> chips = new ArrayList<>();
    chips.add(new Chip("all", "/calibrations", !VERDICTS.contains(verdict)));
    for (String word : VERDICTS) {
      chips.add(
          new Chip(word, "/calibrations?verdict=" + word.replace(" ", "+"), word.equals(verdict)));
    }
    return chips;
  }

  private static String address(String verdict) {
    return VERDICTS.contains(verdict)
        ? "/calibrations?verdict=" + verdict.replace(" ", "+") + "&"
        : "/calibrations?";
  }

  /** Lines of a list, each moment by the clock of its site. */
  static List<Row> rows(DSLContext sql, Plant plant, List<Calibrated> all, UnitsShown units) {
    SiteClocks clocks = clocks(sql, plant, all);
    return all.stream().map(c -> row(c, clocks.shown(c.measuredAt(), c.point()), units)).toList();
  }

  static SiteClocks clocks(DSLContext sql, Plant plant, List<Calibrated> all) {
    return plant.clocks(sql, all.stream().map(Calibrated::point).filter(Objects::nonNull).toList());
  }

  private static Row row(Calibrated c, ZoneId zone, UnitsShown units) {
    return row(c, SiteMoment.shown(c.measuredAt(), zone), units);
  }

  private static Row row(Calibrated c, String taken, UnitsShown units) {
    return new Row(
        "/calibrations/" + c.number(),
        c.number(),
        taken,
        c.place(),
        c.tag() == null ? null : "/loops/" + PathSegment.of(c.tag()),
        c.stage().word(),
        c.outcome(),
        said(c, new Figures(units)));
  }

  private static String said(Calibrated c, Figures figures) {
    if (c.noCurveReason() != null) {
      return c.noCurveReason();
    }
    List<String> words = new ArrayList<>();
    c.numbers().asf().ifPresent(asf -> words.add("ASF " + figures.slope(asf)));
    c.numbers().worstIsfPercent().ifPresent(p -> words.add("worst ISF " + Figures.percent(p)));
    c.numbers().maxDsl().ifPresent(dsl -> words.add("DSL " + figures.deviation(dsl)));
    String trend = c.numbers().isfTrend();
    if (trend != null && !trend.equals("no trend")) {
      words.add("ISF " + trend + " along the gap");
    }
    return String.join(", ", words);
  }

  private void supersede(Context http) {
    Form form = Form.from(http);
    String reason = form.read("reason", text -> Text.needed("the reason", text, 2000));
    String by = form.read("by", text -> Text.needed("the other record", text, 30));
    if (form.ok()) {
      try {
        Calibrated old =
            database.write(
                People.act(Actor.of(http), "supersede calibration", reason),
                tx -> {
                  Calibrated found = found(tx.sql(), http.pathParam("number"));
                  calibrations.supersede(tx, found, calibrations.numbered(tx.sql(), by), reason);
                  return found;
                });
        page.go(http, "/calibrations/" + old.number(), by + " stands in its place now.");
        return;
      } catch (Refused refused) {
        form.complain("by", refused.getMessage());
      }
    }
    one(http, 422, form);
  }

  private void one(Context http, int status, Form form) {
    UnitsShown units = UnitsShown.of(http);
    Map<String, Object> model = new HashMap<>();
    database.read(
        sql -> {
          Calibrated calibrated = found(sql, http.pathParam("number"));
          ZoneId zone = zone(sql, calibrated);
          model.put("record", record(sql, calibrated, zone));
          Optional<ToleranceProfiles.Stored> other = other(sql, http, calibrated);
          model.put("judged", judged(sql, calibrated, other, units, http).orElse(null));
          model.put("superseded", calibrations.superseded(sql, calibrated).orElse(null));
          model.put("hashAsked", http.queryParam("hash"));
          model.put("hash", calibrations.contentHash(sql, calibrated));
          model.put("other", other.map(CalibrationPages::inWords).orElse(null));
          model.put("otherAsked", http.queryParam("profile"));
          model.put("ownVersion", calibrated.profileVersion());
          model.put("versions", calibrated.hasCurve() ? versions(sql) : List.of());
          model.put(
              "panels", panels(sql, calibrated, new RecordPanel.Reader(Actor.of(http), units)));
          return calibrated;
        });
    model.put("form", form);
    page.show(http, status, "calibration/one", model);
  }

  record PanelShown(String template, Object model) {}

  private List<PanelShown> panels(
      DSLContext sql, Calibrated calibrated, RecordPanel.Reader reader) {
    return panels.stream()
        .flatMap(
            panel ->
                panel.model(sql, calibrated, reader).stream()
                    .map(model -> new PanelShown(panel.template(), model)))
        .toList();
  }

  private Calibrated found(DSLContext sql, String number) {
    return calibrations.find(sql, number).orElseThrow(NotFoundResponse::new);
  }

  private ZoneId zone(DSLContext sql, Calibrated calibrated) {
    return clocks(sql, plant, List.of(calibrated)).of(calibrated.point());
  }

  private Record record(DSLContext sql, Calibrated c, ZoneId zone) {
    Conditions under = calibrations.conditions(sql, c);
    return new Record(
        c.number(),
        c.place(),
        c.tag() == null ? null : "/loops/" + PathSegment.of(c.tag()),
        sets.told(sql, c),
        c.setup() == Setup.FITTED ? List.of() : loops(sql, c),
        c.stage().word(),
        c.outcome(),
        SiteMoment.shown(c.measuredAt(), zone) + " " + zone.getId(),
        c.performedBy(),
        c.zero(),
        c.targetAlloy(),
        under,
        Optional.ofNullable(c.profileVersion())
            .flatMap(version -> profiles.version(sql, version))
            .flatMap(profile -> TemperatureRemark.of(under, profile))
            .orElse(""),
        c.noCurveReason() == null ? "" : c.noCurveReason(),
        c.enteredBy() + " on " + SiteMoment.shown(c.enteredAt(), zone) + ": " + c.reason(),
        c.analysisVersion() == null ? "" : c.analysisVersion(),
        parts(sql, c),
        madeWith(sql, c, zone),
        readings(sql, c),
        c.findings());
  }

  private List<LoopLink> loops(DSLContext sql, Calibrated c) {
    return sets.fittedSo(sql, c, clock.instant()).stream()
        .map(tag -> new LoopLink(tag, "/loops/" + PathSegment.of(tag)))
        .toList();
  }

  private List<Reading> readings(DSLContext sql, Calibrated c) {
    return calibrations.readings(sql, c).stream()
        .map(r -> new Reading(r.run().label(), r.gap().toString(), r.output().toString()))
        .toList();
  }

  private List<MadeWith> madeWith(DSLContext sql, Calibrated c, ZoneId zone) {
    return standards.used(sql, calibrations.certificates(sql, c)).stream()
        .map(
            used ->
                new MadeWith(
                    "/standards/" + PathSegment.of(used.standard().code()),
                    used.standard().code(),
                    used.inWords(),
                    used.certificate().overdueOn(SiteMoment.day(c.measuredAt(), zone))))
        .toList();
  }

  private List<Part> parts(DSLContext sql, Calibrated c) {
    List<Combinations.Member> members = Combinations.members(c.fingerprint());
    Map<Long, Component> found =
        register.components(sql, members.stream().map(Combinations.Member::component).toList());
    return members.stream()
        .map(
            member -> {
              Component part = found.get(member.component());
              return new Part(member.component(), part == null ? "?" : part.inWords());
            })
        .toList();
  }

  /** Another version under which the reader wants to look at the record; nothing is changed. */
  private Optional<ToleranceProfiles.Stored> other(DSLContext sql, Context http, Calibrated c) {
    String asked = http.queryParam("profile");
    if (asked == null || !asked.matches("\\d{1,15}") || !c.hasCurve()) {
      return Optional.empty();
    }
    return profiles
        .version(sql, Long.parseLong(asked))
        .filter(stored -> !Objects.equals(c.profileVersion(), stored.version()));
  }

  private static String inWords(ToleranceProfiles.Stored stored) {
    return stored.profile().code() + ", version " + stored.profile().version();
  }

  /** Every version of every profile, to look under. */
  private List<VersionChoice> versions(DSLContext sql) {
    return profiles.newest(sql).stream()
        .flatMap(newest -> profiles.versions(sql, newest.profile().code()).stream())
        .map(stored -> new VersionChoice(stored.version(), inWords(stored)))
        .toList();
  }

  private Optional<CurveResults.Shown> judged(
      DSLContext sql,
      Calibrated c,
      Optional<ToleranceProfiles.Stored> other,
      UnitsShown units,
      Context http) {
    Optional<ToleranceProfiles.Stored> stored =
        other.or(
            () -> Optional.ofNullable(c.profileVersion()).flatMap(v -> profiles.version(sql, v)));
    boolean check = "chance".equals(http.queryParam("check"));
    return calibrations
        .curve(sql, c)
        .flatMap(curve -> stored.map(s -> shown(sql, c, curve, s, units, "curve", check)));
  }

  private CurveResults.Shown shown(
      DSLContext sql,
      Calibrated c,
      Curve curve,
      ToleranceProfiles.Stored judgedBy,
      UnitsShown units,
      String id,
      boolean check) {
    CurveResult result = CurveAnalysis.of(curve, judgedBy.profile());
    CurveResults.Shown shown =
        CurveResults.of(
            result, curve.gapUnit(), units, id, c.zero().isEmpty() ? "" : "zero: " + c.zero());
    List<StandardUsed> used = standards.used(sql, calibrations.certificates(sql, c));
    if (used.isEmpty()) {
      return shown;
    }
    Conditions under = calibrations.conditions(sql, c);
    UncertaintyShown stated =
        UncertaintyShown.of(curve, result, judgedBy.terms(), used, under, units);
    return shown.with(
        check
            ? UncertaintyShown.checked(
                stated, curve, result, judgedBy.terms(), used, under, units, c.id())
            : stated);
  }

  /** The curve judged again by the version that judged it then. */
  private Optional<CurveResults.Shown> judged(
      DSLContext sql, Calibrated c, UnitsShown units, String id) {
    return calibrations
        .curve(sql, c)
        .flatMap(
            curve ->
                Optional.ofNullable(c.profileVersion())
                    .flatMap(version -> profiles.version(sql, version))
                    .map(stored -> shown(sql, c, curve, stored, units, id, false)));
  }

  @Override
  public String template() {
    return "calibration/panel";
  }

  @Override
  public Object model(DSLContext sql, Loop loop) {
    List<Calibrated> all =
        calibrations.shownAtLoop(sql, loop.point(), loop.fingerprint(), loop.viewpoint(), ON_LOOP);
    Optional<Calibrated> latest =
        calibrations
            .ofLoop(sql, loop.point(), loop.fingerprint(), loop.viewpoint(), ON_LOOP)
            .stream()
            .filter(Calibrated::hasCurve)
            .findFirst();
    return new Panel(
        all.stream().map(c -> row(c, loop.zone(), loop.units())).toList(),
        latest.flatMap(c -> judged(sql, c, loop.units(), "latest")).orElse(null),
        latest.map(c -> row(c, loop.zone(), loop.units())).orElse(null),
        latest
            .filter(c -> loop.fingerprint().filter(c.fingerprint()::equals).isPresent())
            .isPresent(),
        loop.tag(),
        loop.viewpoint().asKnownNow() ? open.of(sql, loop.point()) : List.of());
  }

  @Override
  public List<Told> story(DSLContext sql, Loop loop, int most) {
    return calibrations.ofLoop(sql, loop.point(), Optional.empty(), loop.viewpoint(), most).stream()
        .map(
            c ->
                new Told(
                    c.measuredAt(),
                    "calibration " + c.number() + ", " + c.stage().word(),
                    c.outcome(),
                    said(c, new Figures(loop.units())),
                    "by " + c.performedBy(),
                    "/calibrations/" + c.number()))
        .toList();
  }

  @Override
  public List<Need> needs(DSLContext sql, Instant now) {
    return open.needs(sql, now);
  }

  @Override
  public List<Action> actions(Loop loop) {
    return List.of(new Action("Type a curve", "/loops/" + PathSegment.of(loop.tag()) + "/curve"));
  }
}
