package loopwright.calibration;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.curve.CurveAnalysis;
import loopwright.curve.CurveCheck;
import loopwright.curve.CurveFile;
import loopwright.curve.CurveResult;
import loopwright.curve.Remark;
import loopwright.db.Database;
import loopwright.loop.Combinations;
import loopwright.loop.Configuration;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.problem.Refused;
import loopwright.register.Component;
import loopwright.register.Register;
import loopwright.register.ToleranceProfiles;
import loopwright.sheet.CsvReader;
import loopwright.time.Viewpoint;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Calibrations as data under {@code /api}, and the judging of a curve that is only sent along. */
public final class CalibrationData implements Pages {
  private static final int MOST = 500;
  private static final int MOST_MEGABYTES = 2;

  private final Database database;
  private final Plant plant;
  private final Register register;
  private final RegisteredProfiles profiles;
  private final Configuration configuration;
  private final Calibrations calibrations;
  private final InstantSource clock;

  public CalibrationData(
      Database database,
      Plant plant,
      Register register,
      RegisteredProfiles profiles,
      Configuration configuration,
      Calibrations calibrations,
      InstantSource clock) {
    this.database = database;
    this.plant = plant;
    this.register = register;
    this.profiles = profiles;
    this.configuration = configuration;
    this.calibrations = calibrations;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/api/loops/{tag}/calibrations", Permission.READ, this::ofLoop);
    routes.get("/api/calibrations/{number}", Permission.READ, this::one);
    routes.post("/api/analyse", Permission.READ, this::analyse);
  }

  /** Those of a loop and of the parts fitted there, newest first, without their analyses. */
  record OfLoop(String loop, List<CalibrationDocument> calibrations) {}

  private void ofLoop(Context http) {
    http.json(database.read(sql -> ofLoop(sql, http.pathParam("tag"))));
  }

  private OfLoop ofLoop(DSLContext sql, String tag) {
    Point point = plant.pointTagged(sql, tag).orElseThrow(NotFoundResponse::new);
    long number = point.id().number();
    Optional<String> fingerprint =
        Combinations.fingerprint(configuration.at(sql, number, clock.instant()));
    return new OfLoop(
        point.tag(),
        calibrations.shownAtLoop(sql, number, fingerprint, Viewpoint.LATEST, MOST).stream()
            .map(c -> document(sql, c, null))
            .toList());
  }

  private void one(Context http) {
    http.json(database.read(sql -> one(sql, http.pathParam("number"))));
  }

  private CalibrationDocument one(DSLContext sql, String number) {
    Calibrated c = calibrations.find(sql, number).orElseThrow(NotFoundResponse::new);
    return document(sql, c, judged(sql, c).map(this::document).orElse(null));
  }

  private CalibrationDocument document(
      DSLContext sql, Calibrated c, @Nullable CurveDocument analysis) {
    return CalibrationDocument.of(
        c, calibrations.conditions(sql, c), parts(sql, c), readings(sql, c), analysis);
  }

  private Optional<CurveResult> judged(DSLContext sql, Calibrated c) {
    Optional<ToleranceProfiles.Stored> profile =
        Optional.ofNullable(c.profileVersion()).flatMap(version -> profiles.version(sql, version));
    return calibrations
        .curve(sql, c)
        .flatMap(curve -> profile.map(p -> CurveAnalysis.of(curve, p.profile())));
  }

  private CurveDocument document(CurveResult result) {
    return CurveDocument.of(result, List.of(), Optional.empty(), List.of());
  }

  private List<CalibrationDocument.Part> parts(DSLContext sql, Calibrated c) {
    List<Long> numbers =
        Combinations.members(c.fingerprint()).stream().map(member -> member.component()).toList();
    Map<Long, Component> found = register.components(sql, numbers);
    return numbers.stream()
        .map(found::get)
        .filter(Objects::nonNull)
        .map(CalibrationDocument.Part::of)
        .toList();
  }

  private List<CalibrationDocument.Reading> readings(DSLContext sql, Calibrated c) {
    return calibrations.readings(sql, c).stream().map(CalibrationDocument.Reading::of).toList();
  }

  /** Judges the CSV in the body by the profile named in the address; stores nothing. */
  private void analyse(Context http) {
    String code = String.valueOf(http.queryParam("profile"));
    ToleranceProfiles.Stored profile =
        database
            .read(sql -> profiles.newest(sql, code))
            .orElseThrow(() -> new Refused(CalibrationProblem.NO_PROFILE, codes()));
    CurveFile file = CurveFile.of(new CsvReader(MOST_MEGABYTES).read("body", http.bodyAsBytes()));
    CurveCheck check = CurveCheck.of(file.entry(), profile.profile());
    if (check.curve().isEmpty()) {
      throw new Refused(
          CalibrationProblem.CURVE_UNUSABLE,
          check.complaints().stream().map(file::place).collect(Collectors.joining(" ")));
    }
    List<String> asked = check.questions().stream().map(Remark::sentenceWithRow).toList();
    CurveResult result = CurveAnalysis.of(check.curve().get(), profile.profile());
    http.json(CurveDocument.of(result, asked, Optional.empty(), List.of()));
  }

  private String codes() {
    return database.read(profiles::newest).stream()
        .map(stored -> stored.profile().code())
        .collect(Collectors.joining(", "));
  }
}
