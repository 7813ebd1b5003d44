package loopwright.calibration;

import java.util.List;
import java.util.stream.Collectors;
import loopwright.plant.Plant;
import loopwright.plant.SiteClocks;
import loopwright.standard.StandardUsed;
import loopwright.standard.StandardUses;
import loopwright.standard.Standards;
import org.jooq.DSLContext;

/** The calibrations that a reference standard was used for. */
public final class UsesOfStandard implements StandardUses {
  private final Calibrations calibrations;
  private final Standards standards;

  private final Plant plant;

  public UsesOfStandard(Calibrations calibrations, Standards standards, Plant plant) {
    this.plant = plant;
    this.calibrations = calibrations;
    this.standards = standards;
  }

  @Override
  public List<Use> of(DSLContext sql, long standard, int most) {
    List<Calibrated> made = calibrations.madeWith(sql, standard, most);
    SiteClocks clocks = CalibrationLines.clocks(sql, plant, made);
    return made.stream()
        .map(c -> use(sql, standard, c, clocks.shown(c.measuredAt(), c.point())))
        .toList();
  }

  private Use use(DSLContext sql, long standard, Calibrated c, String taken) {
    String certificate =
        standards.used(sql, calibrations.certificates(sql, c)).stream()
            .filter(used -> used.standard().id() == standard)
            .map(StandardUsed::certificate)
            .map(each -> each.number())
            .collect(Collectors.joining(", "));
    return new Use(
        "/calibrations/" + c.number(), c.number(), taken, c.place(), certificate, c.outcome());
  }
}
