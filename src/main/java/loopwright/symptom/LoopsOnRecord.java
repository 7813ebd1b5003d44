package loopwright.symptom;

import java.time.InstantSource;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Calibrations;
import loopwright.calibration.Stage;
import loopwright.loop.Combinations;
import loopwright.loop.Judging;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import org.jooq.DSLContext;

/** Looks up what is on record of a loop that has a symptom. */
public final class LoopsOnRecord {
  private static final int NEWEST = 20;

  private final Plant plant;
  private final Judging judging;
  private final Calibrations calibrations;
  private final InstantSource clock;

  public LoopsOnRecord(
      Plant plant, Judging judging, Calibrations calibrations, InstantSource clock) {
    this.plant = plant;
    this.judging = judging;
    this.calibrations = calibrations;
    this.clock = clock;
  }

  Optional<LoopOnRecord> tagged(DSLContext sql, String tag) {
    return plant.pointTagged(sql, tag).map(point -> loop(sql, point));
  }

  private LoopOnRecord loop(DSLContext sql, Point point) {
    long number = point.id().number();
    Judging.Judged judged =
        judging
            .judge(sql, List.of(new Judging.Subject(number, point.tag())), clock.instant())
            .get(0);
    Optional<String> fingerprint = Combinations.fingerprint(judged.chain());
    ZoneId zone =
        plant.place(sql, point.id()).map(place -> place.site().zone()).orElse(ZoneOffset.UTC);
    return new LoopOnRecord(point, judged.view(), last(sql, number, fingerprint, zone));
  }

  private Optional<LoopOnRecord.LastCurve> last(
      DSLContext sql, long point, Optional<String> fingerprint, ZoneId zone) {
    return calibrations.ofLoop(sql, point, fingerprint, NEWEST).stream()
        .filter(calibrated -> calibrated.stage() != Stage.AS_FOUND && calibrated.hasCurve())
        .findFirst()
        .flatMap(
            calibrated ->
                calibrations
                    .curve(sql, calibrated)
                    .map(
                        curve ->
                            new LoopOnRecord.LastCurve(
                                calibrated, curve, zone, isAsFitted(calibrated, fingerprint))));
  }

  private static boolean isAsFitted(Calibrated calibrated, Optional<String> fingerprint) {
    return fingerprint.filter(calibrated.fingerprint()::equals).isPresent();
  }
}
