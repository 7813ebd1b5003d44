package loopwright.calibration;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.curve.Curve;
import loopwright.curve.CurveAnalysis;
import loopwright.curve.CurveCheck;
import loopwright.curve.CurveEntry;
import loopwright.curve.CurveFile;
import loopwright.curve.Grid;
import loopwright.curve.Remark;
import loopwright.curve.Run;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.loop.Combinations;
import loopwright.loop.Configuration;
import loopwright.loop.Placed;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.PointPlace;
import loopwright.problem.Refused;
import loopwright.register.Component;
import loopwright.register.Register;
import loopwright.register.ToleranceProfiles;
import loopwright.sheet.CsvReader;
import loopwright.time.SiteMoment;
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

/** The page on which a curve is typed; the server judges it while one types. */
public final class CurvePages implements Pages {
  private static final int MOST_MEGABYTES = 2;

  private final Database database;
  private final Page page;
  private final Plant plant;
  private final Register register;
  private final Configuration configuration;
  private final RegisteredProfiles profiles;
  private final Calibrations calibrations;
  private final DraftStore drafts = new DraftStore();
  private final InstantSource clock;

  public CurvePages(
      Database database,
      Page page,
      Plant plant,
      Register register,
      Configuration configuration,
      RegisteredProfiles profiles,
      Calibrations calibrations,
      InstantSource clock) {
    this.database = database;
    this.page = page;
    this.plant = plant;
    this.register = register;
    this.configuration = configuration;
    this.profiles = profiles;
    this.calibrations = calibrations;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/loops/{tag}/curve", Permission.RECORD, this::open);
    routes.post("/loops/{tag}/curve/judged", Permission.RECORD, this::judged);
    routes.post("/loops/{tag}/curve", Permission.RECORD, this::submit);
  }

  /** The loop a curve is typed for. */
  private record Opened(Point point, ZoneId zone, List<Placed> chain) {
    long number() {
      return point.id().number();
    }

    String href() {
      return "/loops/" + PathSegment.of(point.tag());
    }
  }

  record EntryRow(int number, String gap, String up, String down, String complaint) {}

  record Entry(
      String tag,
      String href,
      String loopHref,
      String zone,
      String parts,
      boolean combinationKnown,
      Map<String, String> profiles,
      List<EntryRow> rows,
      List<String> questions) {

    public List<String> gapUnits() {
      return List.of(Unit.MICROMETRE.symbol(), Unit.MIL.symbol());
    }

    public List<String> voltsUnits() {
      return List.of(Unit.VOLT.symbol(), Unit.MILLIVOLT.symbol());
    }

    public Map<String, String> stages() {
      Map<String, String> stages = new LinkedHashMap<>();
      for (Stage stage : Stage.values()) {
        stages.put(stage.word(), stage.word());
      }
      stages.put(
          Stage.NOTHING_TOUCHED.word(), "nothing touched: the as found stands as the as left");
      return stages;
    }

    public Map<String, String> zeros() {
      Map<String, String> zeros = new LinkedHashMap<>();
      for (Zero zero : Zero.values()) {
        zeros.put(zero.word(), zero.word());
      }
      return zeros;
    }
  }

  private Opened opened(DSLContext sql, String tag) {
    Point point = plant.pointTagged(sql, tag).orElseThrow(NotFoundResponse::new);
    ZoneId zone =
        plant
            .place(sql, point.id())
            .map(PointPlace::site)
            .orElseThrow(NotFoundResponse::new)
            .zone();
    return new Opened(point, zone, configuration.at(sql, point.id().number(), clock.instant()));
  }

  private void open(Context http) {
    Opened opened = database.read(sql -> opened(sql, http.pathParam("tag")));
    Actor actor = Actor.of(http);
    Form form =
        database
            .read(sql -> drafts.find(sql, opened.number(), Long.parseLong(actor.id())))
            .orElseGet(() -> fresh(opened, actor));
    show(http, 200, opened, form);
  }

  /** The suiting profile, its gaps filled in, now. */
  private Form fresh(Opened opened, Actor actor) {
    Optional<ToleranceProfiles.Stored> suiting =
        database.read(sql -> profiles.suiting(sql, opened.number(), opened.chain()));
    List<String> moment = List.of(SiteMoment.shown(clock.instant(), opened.zone()).split(" "));
    Form form =
        Form.of(
            Map.of(
                "on", moment.get(0),
                "time", moment.get(1),
                "performed-by", actor.name(),
                "stage", Stage.AS_FOUND.word(),
                "zero", Zero.MECHANICAL_TOUCH.word(),
                "alloy", opened.point().details().surroundings().shaftAlloy(),
                "sign", "negative"));
    suiting.ifPresent(stored -> grid(form, stored.profile().grids().get(0)));
    suiting.ifPresent(stored -> form.put("profile", stored.profile().code()));
    return form;
  }

  private static void grid(Form form, Grid grid) {
    form.put("gap-unit", grid.unit().symbol())
        .put("gap", grid.positions().stream().map(Numbers::plain).toList());
  }

  private void show(Context http, int status, Opened opened, Form form) {
    Map<String, Object> model = new HashMap<>();
    model.put("form", form);
    CurveForm typed = new CurveForm(form);
    Optional<ToleranceProfiles.Stored> profile = profile(form);
    Optional<CurveCheck> check =
        typed.anythingTyped() ? profile.map(p -> typed.check(p.profile())) : Optional.empty();
    model.put("entry", entry(opened, typed, check));
    model.put("judged", shown(http, check, profile).orElse(null));
    model.put("complaints", complaints(check));
    page.show(http, status, "calibration/curve", model);
  }

  private Optional<ToleranceProfiles.Stored> profile(Form form) {
    return database.read(sql -> profiles.newest(sql, form.typed("profile")));
  }

  private Entry entry(Opened opened, CurveForm typed, Optional<CurveCheck> check) {
    List<CurveForm.TypedRow> rows = typed.rows();
    List<EntryRow> shown = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      CurveForm.TypedRow row = rows.get(i);
      shown.add(new EntryRow(i + 1, row.gap(), row.up(), row.down(), complaint(check, i + 1)));
    }
    Map<String, String> choices = new LinkedHashMap<>();
    database
        .read(profiles::newest)
        .forEach(stored -> choices.put(stored.profile().code(), stored.profile().name()));
    return new Entry(
        opened.point().tag(),
        opened.href() + "/curve",
        opened.href(),
        opened.zone().getId(),
        parts(opened),
        Combinations.fingerprint(opened.chain()).isPresent(),
        choices,
        shown,
        check.map(c -> c.questions().stream().map(Remark::sentence).toList()).orElse(List.of()));
  }

  private String parts(Opened opened) {
    List<Long> numbers =
        opened.chain().stream().flatMap(p -> p.content().component().stream().boxed()).toList();
    Map<Long, Component> found = database.read(sql -> register.components(sql, numbers));
    return numbers.stream()
        .map(found::get)
        .filter(Objects::nonNull)
        .map(Component::inWords)
        .collect(Collectors.joining(", "));
  }

  private static String complaint(Optional<CurveCheck> check, int row) {
    return check.stream()
        .flatMap(c -> c.complaints().stream())
        .filter(remark -> remark.row() == row)
        .map(Remark::sentence)
        .collect(Collectors.joining(" "));
  }

  private static List<String> complaints(Optional<CurveCheck> check) {
    return check.stream()
        .flatMap(c -> c.complaints().stream())
        .map(remark -> (remark.row() > 0 ? "Row " + remark.row() + ": " : "") + remark.sentence())
        .toList();
  }

  private static Optional<CurveResults.Shown> shown(
      Context http, Optional<CurveCheck> check, Optional<ToleranceProfiles.Stored> profile) {
    Optional<Curve> curve = check.flatMap(CurveCheck::curve);
    return profile.isEmpty()
        ? Optional.empty()
        : curve.map(
            c ->
                CurveResults.of(
                    CurveAnalysis.of(c, profile.get().profile()),
                    c.gapUnit(),
                    UnitsShown.of(http),
                    "typed",
                    ""));
  }

  private void judged(Context http) {
    Form form = Form.from(http);
    CurveForm typed = new CurveForm(form);
    Optional<ToleranceProfiles.Stored> profile = profile(form);
    Optional<CurveCheck> check =
        typed.anythingTyped() ? profile.map(p -> typed.check(p.profile())) : Optional.empty();
    Map<String, Object> model = new HashMap<>();
    model.put("judged", shown(http, check, profile).orElse(null));
    model.put("complaints", complaints(check));
    page.part(http, 200, "calibration/result", "judged", model);
  }

  private void submit(Context http) {
    Opened opened = database.read(sql -> opened(sql, http.pathParam("tag")));
    Form form = Form.from(http);
    switch (form.typed("do")) {
      case "load" -> load(http, opened, form);
      case "draft" -> draft(http, opened, form);
      default -> keep(http, opened, form);
    }
  }

  /** Puts a file's readings into the rows; nothing is kept yet. */
  private void load(Context http, Opened opened, Form form) {
    UploadedFile file = http.uploadedFile("file");
    if (file == null || file.size() == 0) {
      form.complain(
          "file", "Choose a CSV file with the columns gap_um or gap_mil, and volts or millivolts.");
      show(http, 422, opened, form);
      return;
    }
    try {
      fill(
          form,
          CurveFile.of(new CsvReader(MOST_MEGABYTES).read(file.filename(), bytes(file))).entry());
      show(http, 200, opened, form);
    } catch (Refused refused) {
      form.complain("file", refused.getMessage());
      show(http, 422, opened, form);
    }
  }

  private static byte[] bytes(UploadedFile file) {
    try (InputStream in = file.content()) {
      return in.readAllBytes();
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
  }

  private static void fill(Form form, CurveEntry entry) {
    Map<String, String[]> rows = new LinkedHashMap<>();
    for (CurveEntry.Cells cells : entry.rows()) {
      String[] row = rows.computeIfAbsent(cells.gap(), gap -> new String[] {gap, "", ""});
      boolean down = Run.named(cells.run()).filter(run -> run == Run.DOWN).isPresent();
      row[down ? 2 : 1] = cells.volts();
    }
    form.put("gap", rows.values().stream().map(row -> row[0]).toList());
    form.put("up", rows.values().stream().map(row -> row[1]).toList());
    form.put("down", rows.values().stream().map(row -> row[2]).toList());
    form.put("gap-unit", entry.gapUnit().symbol());
    form.put("volts-unit", entry.voltsUnit().symbol());
    form.put("sign", entry.sign().label());
  }

  private void draft(Context http, Opened opened, Form form) {
    Actor actor = Actor.of(http);
    database.write(
        act(actor, "save curve draft", "not finished yet"),
        tx -> drafts.save(tx, opened.number(), Long.parseLong(actor.id()), form));
    page.go(http, opened.href() + "/curve", "Kept as a draft; it waits for you here.");
  }

  private void keep(Context http, Opened opened, Form form) {
    CurveForm typed = new CurveForm(form);
    Stage stage = typed.stage();
    Optional<Instant> at = typed.measuredAt(opened.zone());
    String by = form.text("performed-by", 120);
    String reason = form.text("reason", 2000);
    Optional<NewCalibration.Outcome> outcome = outcome(form, typed);
    if (!form.ok() || at.isEmpty() || outcome.isEmpty()) {
      show(http, 422, opened, form);
      return;
    }
    Actor actor = Actor.of(http);
    NewCalibration fresh =
        new NewCalibration(
            opened.number(),
            stage,
            at.get(),
            by,
            typed.zero(),
            form.typed("alloy").strip(),
            outcome.get(),
            "entered");
    try {
      String number =
          database.write(
              act(actor, "calibration", reason),
              tx -> {
                drafts.discard(tx, opened.number(), Long.parseLong(actor.id()));
                return calibrations.keep(tx, fresh);
              });
      page.go(http, "/calibrations/" + number, "Kept as " + number + ".");
    } catch (Refused refused) {
      form.complain(refused);
      show(http, 422, opened, form);
    }
  }

  private Optional<NewCalibration.Outcome> outcome(Form form, CurveForm typed) {
    if (typed.noCurve()) {
      String reason = form.text("no-curve-reason", 400);
      return form.complaint("no-curve-reason") == null
          ? Optional.of(new NewCalibration.NoCurve(reason))
          : Optional.empty();
    }
    Optional<ToleranceProfiles.Stored> profile = profile(form);
    if (profile.isEmpty()) {
      form.complain("profile", "Choose the profile that judges this curve.");
      return Optional.empty();
    }
    CurveCheck check = typed.check(profile.get().profile());
    check.complaints().forEach(remark -> form.complain(rowWords(remark)));
    if (!check.questions().isEmpty() && !form.chosen("confirmed", "yes")) {
      form.complain("confirmed", "Look at the questions below; tick here if it is as typed.");
    }
    return check
        .curve()
        .map(
            curve ->
                new NewCalibration.Measured(
                    curve, profile.get().version(), profile.get().profile()));
  }

  private static String rowWords(Remark remark) {
    return (remark.row() > 0 ? "Row " + remark.row() + ": " : "") + remark.sentence();
  }

  private static Act act(Actor actor, String what, String reason) {
    return new Act(Long.valueOf(actor.id()), actor.name(), actor.role().word(), what, reason);
  }
}
