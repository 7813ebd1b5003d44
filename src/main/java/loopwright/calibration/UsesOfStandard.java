package loopwright.calibration;

import java.time.ZoneOffset;
import java.util.List;
import java.util.stream.Collectors;
import loopwright.standard.StandardUsed;
import loopwright.standard.StandardUses;
import loopwright.standard.Standards;
import loopwright.time.SiteMoment;
import org.jooq.DSLContext;

/** The calibrations that a reference standard was used for. */
public final class UsesOfStandard implements StandardUses {
  private final Calibrations calibrations;
  private final Standards standards;

  public UsesOfStandard(Calibrations calibrations, Standards standards) {
    this.calibrations = calibrations;
    this.standards = standards;
  }

  @Override
  public List<Use> of(DSLContext sql, long standard, int most) {
    return calibrations.madeWith(sql, standard, most).stream()
        .map(calibrated -> use(sql, standard, calibrated))
        .toList();
  }

  private Use use(DSLContext sql, long standard, Calibrated c) {
    String certificate =
        standards.used(sql, calibrations.certificates(sql, c)).stream()
            .filter(used -> used.standard().id() == standard)
            .map(StandardUsed::certificate)
            .map(each -> each.number())
            .collect(Collectors.joining(", "));
    return new Use(
        "/calibrations/" + c.number(),
        c.number(),
        SiteMoment.shown(c.measuredAt(), ZoneOffset.UTC) + " UTC",
        c.tag() == null ? "bench" : c.tag(),
        certificate,
        c.outcome());
  }
}
