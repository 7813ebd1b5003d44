package loopwright.temporary;

import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.function.Supplier;
import loopwright.register.ComponentId;
import loopwright.register.PartPanel;
import loopwright.time.SiteMoment;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/** On a part's page: where it sits, or sat, for a time only. */
public final class TemporaryOfPart implements PartPanel {
  private final TemporaryFits fits;
  private final Supplier<ZoneId> zone;
  private final InstantSource clock;

  /**
   * @param zone on whose calendar days are over
   */
  public TemporaryOfPart(TemporaryFits fits, Supplier<ZoneId> zone, InstantSource clock) {
    this.fits = fits;
    this.zone = zone;
    this.clock = clock;
  }

  @Override
  public String template() {
    return "temporary/panel";
  }

  @Override
  public Object model(DSLContext sql, ComponentId part, UnitsShown units) {
    LocalDate today = SiteMoment.day(clock.instant(), zone.get());
    return fits.ofComponent(sql, part.number()).stream()
        .map(fit -> TemporaryPages.line(fit, today))
        .toList();
  }
}
