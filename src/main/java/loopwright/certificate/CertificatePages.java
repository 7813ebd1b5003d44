package loopwright.certificate;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.nio.charset.StandardCharsets;
import java.time.InstantSource;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Calibrations;
import loopwright.calibration.Evidence;
import loopwright.calibration.RecordPanel;
import loopwright.calibration.Stage;
import loopwright.curve.CurveAnalysis;
import loopwright.db.Database;
import loopwright.label.LabelBase;
import loopwright.loop.Combinations;
import loopwright.plant.Plant;
import loopwright.plant.PointId;
import loopwright.plant.PointPlace;
import loopwright.problem.Refused;
import loopwright.register.Component;
import loopwright.register.Register;
import loopwright.signing.Signing;
import loopwright.time.SiteMoment;
import loopwright.units.Unit;
import loopwright.web.Actor;
import loopwright.web.AskedAddress;
import loopwright.web.Pages;
import loopwright.web.Permission;
import loopwright.web.Routes;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Certificates to print, raw points to take along, and the links to them on a record's page. */
public final class CertificatePages implements Pages, RecordPanel {
  private final Database database;
  private final Plant plant;
  private final Register register;
  private final Calibrations calibrations;
  private final Evidence.Book book;
  private final Signing signing;
  private final LabelBase base;
  private final InstantSource clock;

  /**
   * @param base under which address records are found
   */
  public CertificatePages(
      Database database,
      Plant plant,
      Register register,
      Calibrations calibrations,
      Evidence.Book book,
      Signing signing,
      LabelBase base,
      InstantSource clock) {
    this.database = database;
    this.plant = plant;
    this.register = register;
    this.calibrations = calibrations;
    this.book = book;
    this.signing = signing;
    this.base = base;
    this.clock = clock;
  }

  @Override
  public void mount(Routes routes) {
    routes.get("/calibrations/{number}/certificate.pdf", Permission.READ, this::pdf);
    routes.get("/calibrations/{number}/points.csv", Permission.READ, this::points);
    routes.get("/calibrations/{number}/points.xlsx", Permission.READ, this::workbook);
  }

  private Calibrated found(DSLContext sql, String number) {
    try {
      return calibrations.numbered(sql, number);
    } catch (Refused none) {
      throw new NotFoundResponse();
    }
  }

  private void points(Context http) {
    Evidence evidence = database.read(sql -> book.of(sql, found(sql, http.pathParam("number"))));
    send(
        http,
        "text/csv; charset=utf-8",
        evidence.record().number() + ".csv",
        PointsFile.csv(evidence).getBytes(StandardCharsets.UTF_8));
  }

  private void workbook(Context http) {
    Evidence evidence = database.read(sql -> book.of(sql, found(sql, http.pathParam("number"))));
    send(
        http,
        "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
        evidence.record().number() + ".xlsx",
        PointsWorkbook.xlsx(evidence));
  }

  private static void send(Context http, String type, String name, byte[] bytes) {
    http.contentType(type)
        .header("Content-Disposition", "inline; filename=\"" + name + "\"")
        .result(bytes);
  }

  private void pdf(Context http) {
    Report report = database.read(sql -> report(sql, http));
    send(
        http,
        "application/pdf",
        http.pathParam("number") + ".pdf",
        CertificateDocument.pdf(report, clock.instant()));
  }

  private Report report(DSLContext sql, Context http) {
    Calibrated c = found(sql, http.pathParam("number"));
    ZoneId zone = place(sql, c).map(place -> place.site().zone()).orElse(ZoneOffset.UTC);
    Unit unit = UnitsShown.of(http).metric() ? Unit.MICROMETRE : Unit.MIL;
    CertificateReport maker = new CertificateReport(zone, unit);
    CertificateReport.Origin origin = origin(http, c, zone);
    String with = http.queryParam("with");
    if (with == null) {
      return maker.single(subject(sql, c), origin);
    }
    Calibrated other = found(sql, with);
    if (!partnerOf(sql, c).map(Calibrated::number).equals(Optional.of(other.number()))) {
      throw new NotFoundResponse();
    }
    return maker.pair(subject(sql, other), subject(sql, c), origin);
  }

  private CertificateReport.Origin origin(Context http, Calibrated c, ZoneId zone) {
    String printed =
        "printed %s %s by %s, Loopwright, analysis version %s"
            .formatted(
                SiteMoment.shown(clock.instant(), zone),
                zone.getId(),
                Actor.of(http).name(),
                CurveAnalysis.ANALYSIS_VERSION);
    return new CertificateReport.Origin(
        base.known(AskedAddress.of(http)).map(address -> address + "/calibrations/" + c.number()),
        printed);
  }

  private Optional<PointPlace> place(DSLContext sql, Calibrated c) {
    return Optional.ofNullable(c.point()).flatMap(point -> plant.place(sql, new PointId(point)));
  }

  private CertificateReport.Subject subject(DSLContext sql, Calibrated c) {
    String place =
        place(sql, c)
            .map(p -> ", " + p.machine().name() + ", " + p.train().code() + ", " + p.site().name())
            .orElse("");
    return new CertificateReport.Subject(
        book.of(sql, c), parts(sql, c), place, signing.signatures(sql, c));
  }

  private List<String> parts(DSLContext sql, Calibrated c) {
    List<Combinations.Member> members = Combinations.members(c.fingerprint());
    Map<Long, Component> found =
        register.components(sql, members.stream().map(Combinations.Member::component).toList());
    return members.stream()
        .map(member -> found.get(member.component()))
        .map(part -> part == null ? "a part that is not in the register" : part.inWords())
        .toList();
  }

  /** The as found that an as left of the same loop belongs to: the last one before it. */
  private Optional<Calibrated> partnerOf(DSLContext sql, Calibrated c) {
    Long point = c.point();
    if (point == null || c.stage() != Stage.AS_LEFT) {
      return Optional.empty();
    }
    return calibrations.ofLoop(sql, point, Optional.empty(), 50).stream()
        .filter(each -> each.measuredAt().isBefore(c.measuredAt()))
        .filter(each -> calibrations.superseded(sql, each).isEmpty())
        .findFirst()
        .filter(each -> each.stage() == Stage.AS_FOUND);
  }

  /** Addresses on a record's page. */
  record Panel(
      String pdf, String csv, String xlsx, @Nullable String pair, @Nullable String partner) {}

  @Override
  public String template() {
    return "certificate/panel";
  }

  @Override
  public Optional<Object> model(DSLContext sql, Calibrated c, Reader reader) {
    String here = "/calibrations/" + c.number();
    Optional<String> partner = partnerOf(sql, c).map(Calibrated::number);
    return Optional.of(
        new Panel(
            here + "/certificate.pdf",
            here + "/points.csv",
            here + "/points.xlsx",
            partner.map(number -> here + "/certificate.pdf?with=" + number).orElse(null),
            partner.orElse(null)));
  }
}
