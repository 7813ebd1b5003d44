package loopwright.closeout;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Calibrations;
import loopwright.calibration.Stage;
import loopwright.exposure.Meanwhile;
import loopwright.outage.Outage;
import loopwright.time.SiteMoment;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/** As-founds out of tolerance that came out of an outage, and what they did until then. */
public final class FoundOutOfTolerance {
  private static final int NEWEST = 40;

  private final Calibrations calibrations;
  private final Meanwhile meanwhile;

  public FoundOutOfTolerance(Calibrations calibrations, Meanwhile meanwhile) {
    this.calibrations = calibrations;
    this.meanwhile = meanwhile;
  }

  /**
   * Those of one loop, whether its sheet brought them or somebody typed them.
   *
   * @param numbers of calibrations that its sheet brought
   * @param until when it was closed, or now
   */
  List<CloseOut.Exposed> during(
      DSLContext sql,
      Outage outage,
      long point,
      List<String> numbers,
      Instant until,
      UnitsShown units) {
    Instant from = SiteMoment.startOf(outage.begins(), outage.zone());
    return calibrations.ofLoop(sql, point, Optional.empty(), NEWEST).stream()
        .filter(c -> c.stage() != Stage.AS_LEFT && !c.outcome().equals("conforms"))
        .filter(c -> numbers.contains(c.number()) || isWithin(c, from, until))
        .map(c -> new CloseOut.Exposed(c.number(), meanwhile.told(sql, c, outage.zone(), units)))
        .toList();
  }

  private static boolean isWithin(Calibrated c, Instant from, Instant until) {
    return !c.measuredAt().isBefore(from) && !c.measuredAt().isAfter(until);
  }
}
