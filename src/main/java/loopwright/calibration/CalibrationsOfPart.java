package loopwright.calibration;

import java.util.List;
import loopwright.plant.Plant;
import loopwright.register.ComponentId;
import loopwright.register.PartPanel;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/** On a part's page: the calibrations of combinations that held it, wherever they were. */
public final class CalibrationsOfPart implements PartPanel {
  private static final int MOST = 30;

  private final Calibrations calibrations;
  private final Plant plant;

  public CalibrationsOfPart(Calibrations calibrations, Plant plant) {
    this.plant = plant;
    this.calibrations = calibrations;
  }

  record Panel(List<CalibrationLines.Row> rows) {}

  @Override
  public String template() {
    return "calibration/of-part";
  }

  @Override
  public Object model(DSLContext sql, ComponentId part, UnitsShown units) {
    return new Panel(
        CalibrationLines.rows(
            sql, plant, calibrations.ofComponent(sql, part.number(), MOST), units));
  }
}
