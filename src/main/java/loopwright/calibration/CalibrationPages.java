package loopwright.calibration;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.curve.CurveAnalysis;
import loopwright.db.Database;
import loopwright.loop.Combinations;
import loopwright.loop.LoopPanel;
import loopwright.plant.Plant;
import loopwright.plant.PointId;
import loopwright.problem.Refused;
import loopwright.register.Component;
import loopwright.register.Register;
import loopwright.time.SiteMoment;
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
public final class CalibrationPages implements Pages, LoopPanel {
  private static final int PAGE = 50;
  private static final int ON_LOOP = 12;

  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Register register;
  private final RegisteredProfiles profiles;
  private final Calibrations calibrations;

  public CalibrationPages(
      Database database,
      Page page,
      Plant plant,
      Register register,
      RegisteredProfiles profiles,
      Calibrations calibrations) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.register = register;
    this.profiles = profiles;
    this.calibrations = calibrations;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/calibrations", Permission.READ, this::list);
    routes.get("/calibrations/{number}", Permission.READ, this::one);
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

  record Chip(String label, String href, boolean on) {}

  record Part(long id, String slot, String words) {}

  record Record(
      String number,
      String tag,
      @Nullable String tagHref,
      String stage,
      String verdict,
      String when,
      String by,
      String zero,
      String alloy,
      String noCurve,
      String entered,
      String analysis,
      List<Part> parts,
      List<String> findingsThen) {}

  record Panel(
      List<Row> rows,
      CurveResults.@Nullable Shown latest,
      @Nullable Row head,
      boolean fitted,
      String tag) {}

  private void list(Context http) {
    String verdict = String.valueOf(http.queryParam("verdict"));
    Condition which =
        verdict.equals("conforms") || verdict.equals("does not conform")
            ? CalibrationStore.verdict(verdict)
            : DSL.noCondition();
    String before = http.queryParam("before");
    Condition from =
        before == null
            ? DSL.noCondition()
            : database.read(
                sql -> {
                  Calibrated last = calibrations.numbered(sql, before);
                  return CalibrationStore.before(last.measuredAt(), last.id());
                });
    List<Calibrated> found =
        database.read(sql -> calibrations.store().latest(sql, which.and(from), PAGE + 1));
    List<Calibrated> shown = found.size() > PAGE ? found.subList(0, PAGE) : found;
    Map<String, Object> model = new HashMap<>();
    model.put("rows", shown.stream().map(c -> row(c, ZoneOffset.UTC)).toList());
    model.put("chips", chips(verdict));
    model.put(
        "older",
        found.size() > PAGE ? address(verdict) + "before=" + shown.get(PAGE - 1).number() : null);
    model.put("newest", before == null ? null : address(verdict));
    page.show(http, "calibration/list", model);
  }

  private static List<Chip> chips(String verdict) {
    List<Chip> chips = new ArrayList<>();
    chips.add(new Chip("all", "/calibrations", !verdict.contains("conform")));
    for (String word : List.of("conforms", "does not conform")) {
      chips.add(
          new Chip(word, "/calibrations?verdict=" + word.replace(" ", "+"), word.equals(verdict)));
    }
    return chips;
  }

  private static String address(String verdict) {
    return verdict.contains("conform")
        ? "/calibrations?verdict=" + verdict.replace(" ", "+") + "&"
        : "/calibrations?";
  }

  static Row row(Calibrated c, ZoneId zone) {
    return new Row(
        "/calibrations/" + c.number(),
        c.number(),
        SiteMoment.shown(c.measuredAt(), zone),
        c.tag() == null ? "bench" : c.tag(),
        c.tag() == null ? null : "/loops/" + PathSegment.of(c.tag()),
        c.stage().word(),
        c.verdict() == null ? "no curve" : c.verdict(),
        said(c));
  }

  private static String said(Calibrated c) {
    if (c.noCurveReason() != null) {
      return c.noCurveReason();
    }
    StringBuilder words = new StringBuilder();
    c.numbers().asf().ifPresent(asf -> words.append("ASF %.3f mV/µm".formatted(asf)));
    c.numbers().worstIsfPercent().ifPresent(p -> words.append(", worst ISF %+.1f %%".formatted(p)));
    c.numbers().maxDsl().ifPresent(d -> words.append(", DSL %.1f µm".formatted(d)));
    if (c.numbers().isfTrend() != null && !c.numbers().isfTrend().equals("no trend")) {
      words.append(", ISF ").append(c.numbers().isfTrend()).append(" along the gap");
    }
    return words.toString().replace('-', '−');
  }

  private void one(Context http) {
    UnitsShown units = UnitsShown.of(http);
    Map<String, Object> model = new HashMap<>();
    database.read(
        sql -> {
          Calibrated calibrated = found(sql, http.pathParam("number"));
          ZoneId zone = zone(sql, calibrated);
          model.put("record", record(sql, calibrated, zone));
          model.put("judged", judged(sql, calibrated, units, "curve").orElse(null));
          return calibrated;
        });
    page.show(http, "calibration/one", model);
  }

  private Calibrated found(DSLContext sql, String number) {
    try {
      return calibrations.numbered(sql, number);
    } catch (Refused none) {
      throw new NotFoundResponse();
    }
  }

  private ZoneId zone(DSLContext sql, Calibrated calibrated) {
    return Optional.ofNullable(calibrated.point())
        .flatMap(point -> plant.place(sql, new PointId(point)))
        .map(place -> place.site().zone())
        .orElse(ZoneOffset.UTC);
  }

  private Record record(DSLContext sql, Calibrated c, ZoneId zone) {
    return new Record(
        c.number(),
        c.tag() == null ? "bench" : c.tag(),
        c.tag() == null ? null : "/loops/" + PathSegment.of(c.tag()),
        c.stage().word(),
        c.verdict() == null ? "no curve" : c.verdict(),
        SiteMoment.shown(c.measuredAt(), zone) + " " + zone.getId(),
        c.performedBy(),
        c.zero(),
        c.targetAlloy(),
        c.noCurveReason() == null ? "" : c.noCurveReason(),
        "%s on %s: %s".formatted(c.enteredBy(), SiteMoment.shown(c.enteredAt(), zone), c.reason()),
        c.analysisVersion() == null ? "" : c.analysisVersion(),
        parts(sql, c),
        c.findings());
  }

  private List<Part> parts(DSLContext sql, Calibrated c) {
    List<Combinations.Member> members = Combinations.members(c.fingerprint());
    Map<Long, Component> found =
        register.components(sql, members.stream().map(Combinations.Member::component).toList());
    return members.stream()
        .map(
            member -> {
              Component part = found.get(member.component());
              return new Part(
                  member.component(), member.slot(), part == null ? "?" : part.inWords());
            })
        .toList();
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
                    .map(
                        stored ->
                            CurveResults.of(
                                CurveAnalysis.of(curve, stored.profile()),
                                curve.gapUnit(),
                                units,
                                id,
                                c.zero().isEmpty() ? "" : "zero: " + c.zero())));
  }

  @Override
  public String template() {
    return "calibration/panel";
  }

  @Override
  public Object model(DSLContext sql, Loop loop) {
    List<Calibrated> all =
        calibrations.ofLoop(sql, loop.point(), loop.fingerprint(), loop.viewpoint(), ON_LOOP);
    Optional<Calibrated> latest = all.stream().filter(Calibrated::hasCurve).findFirst();
    return new Panel(
        all.stream().map(c -> row(c, loop.zone())).toList(),
        latest.flatMap(c -> judged(sql, c, loop.units(), "latest")).orElse(null),
        latest.map(c -> row(c, loop.zone())).orElse(null),
        latest
            .filter(c -> loop.fingerprint().filter(c.fingerprint()::equals).isPresent())
            .isPresent(),
        loop.tag());
  }

  @Override
  public List<Action> actions(Loop loop) {
    return List.of(new Action("Type a curve", "/loops/" + PathSegment.of(loop.tag()) + "/curve"));
  }
}
