package loopwright.calibration;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
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
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Calibrations to read: one record, and what a loop's page shows of them. */
public final class CalibrationPages implements Pages, LoopPanel, LoopStory, Need.Source {
  private static final int ON_LOOP = 12;
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
    routes.get("/calibrations/{number}", Permission.READ, http -> one(http, 200, Form.blank()));
    routes.post("/calibrations/{number}/supersede", Permission.RECORD, this::supersede);
  }

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
      List<CalibrationLines.Row> rows,
      CurveResults.@Nullable Shown latest,
      CalibrationLines.@Nullable Row head,
      boolean fitted,
      String tag,
      List<String> open) {}

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
                  panels.forEach(panel -> panel.refuseSuperseding(tx.sql(), found, Actor.of(http)));
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
    return CalibrationLines.clocks(sql, plant, List.of(calibrated)).of(calibrated.point());
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
        all.stream().map(c -> CalibrationLines.row(c, loop.zone(), loop.units())).toList(),
        latest.flatMap(c -> judged(sql, c, loop.units(), "latest")).orElse(null),
        latest.map(c -> CalibrationLines.row(c, loop.zone(), loop.units())).orElse(null),
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
                    CalibrationLines.said(c, new Figures(loop.units())),
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
