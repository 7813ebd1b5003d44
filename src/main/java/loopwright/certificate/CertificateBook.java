package loopwright.certificate;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Duration;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Calibrations;
import loopwright.calibration.Evidence;
import loopwright.calibration.Stage;
import loopwright.curve.CurveAnalysis;
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
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/** Puts together what is printed of calibrations, on paper or as a page to print. */
public final class CertificateBook {
  /** Found and left of one job lie within this, as for what is open; own choice. */
  private static final Duration ONE_JOB = Duration.ofDays(60);

  private static final int LOOKED_AT = 50;

  private final Plant plant;
  private final Register register;
  private final Calibrations calibrations;
  private final Evidence.Book evidence;
  private final Signing signing;
  private final LabelBase base;
  private final InstantSource clock;

  /**
   * @param base under which address records are found
   */
  public CertificateBook(
      Plant plant,
      Register register,
      Calibrations calibrations,
      Evidence.Book evidence,
      Signing signing,
      LabelBase base,
      InstantSource clock) {
    this.plant = plant;
    this.register = register;
    this.calibrations = calibrations;
    this.evidence = evidence;
    this.signing = signing;
    this.base = base;
    this.clock = clock;
  }

  /** The calibration that an address names; not found if there is none. */
  Calibrated found(DSLContext sql, String number) {
    try {
      return calibrations.numbered(sql, number);
    } catch (Refused none) {
      throw new NotFoundResponse();
    }
  }

  Evidence evidence(DSLContext sql, String number) {
    return evidence.of(sql, found(sql, number));
  }

  /** Of the calibration asked for; with {@code with=} beside the as found it belongs to. */
  Report report(DSLContext sql, Context http) {
    Calibrated c = found(sql, http.pathParam("number"));
    ZoneId zone =
        plant.clocks(sql, c.point() == null ? List.of() : List.of(c.point())).of(c.point());
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
        evidence.of(sql, c), parts(sql, c), place, signing.signatures(sql, c));
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

  /** The as found that an as left of the same loop and job belongs to: the last one before it. */
  Optional<Calibrated> partnerOf(DSLContext sql, Calibrated c) {
    Long point = c.point();
    if (point == null || c.stage() != Stage.AS_LEFT) {
      return Optional.empty();
    }
    return calibrations.ofLoop(sql, point, Optional.empty(), LOOKED_AT).stream()
        .filter(each -> each.measuredAt().isBefore(c.measuredAt()))
        .filter(each -> calibrations.superseded(sql, each).isEmpty())
        .findFirst()
        .filter(each -> each.stage() == Stage.AS_FOUND)
        .filter(each -> !each.measuredAt().isBefore(c.measuredAt().minus(ONE_JOB)));
  }
}
