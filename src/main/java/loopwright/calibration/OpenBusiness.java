package loopwright.calibration;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.loop.Need;
import loopwright.plant.Plant;
import loopwright.plant.PointId;
import loopwright.plant.PointPlace;
import loopwright.web.PathSegment;
import org.jooq.Condition;
import org.jooq.DSLContext;

/**
 * As found without as left, and the reverse. The first page lists those of the last 60 days (own
 * choice); a loop's page says so however old it is.
 */
final class OpenBusiness {
  private static final int MOST = 100;
  private static final Duration LISTED = Duration.ofDays(60);

  private final Calibrations calibrations;
  private final Plant plant;

  OpenBusiness(Calibrations calibrations, Plant plant) {
    this.calibrations = calibrations;
    this.plant = plant;
  }

  /** What is open, in a sentence. */
  private enum Kind {
    FOUND(
        "As found %s (%s) has no as left yet.",
        "Calibrate as left, or say that nothing was touched.") {
      @Override
      Condition condition() {
        return OpenBusinessStore.foundWithoutLeft();
      }
    },
    LEFT(
        "As left %s (%s) has no as found before it: what it was before nobody can say.",
        "Enter the as found if it was taken; an adjusted loop that nobody read has no history.") {
      @Override
      Condition condition() {
        return OpenBusinessStore.leftWithoutFound();
      }
    };

    private final String sentence;
    private final String nextStep;

    Kind(String sentence, String nextStep) {
      this.sentence = sentence;
      this.nextStep = nextStep;
    }

    abstract Condition condition();

    String said(Calibrated c) {
      return sentence.formatted(c.number(), c.measuredAt().toString().substring(0, 10));
    }
  }

  /** Of one loop, in sentences. */
  List<String> of(DSLContext sql, long point) {
    List<String> sentences = new ArrayList<>();
    for (Kind kind : Kind.values()) {
      calibrations
          .store()
          .latest(sql, CalibrationStore.ofPoint(point).and(kind.condition()), 1)
          .forEach(c -> sentences.add(kind.said(c)));
    }
    return sentences;
  }

  List<Need> needs(DSLContext sql, Instant now) {
    List<Need> needs = new ArrayList<>();
    Condition listed = OpenBusinessStore.since(now.minus(LISTED));
    for (Kind kind : Kind.values()) {
      calibrations
          .store()
          .latest(sql, listed.and(kind.condition()), MOST)
          .forEach(c -> place(sql, c).ifPresent(place -> needs.add(need(kind, c, place))));
    }
    return needs;
  }

  private Optional<PointPlace> place(DSLContext sql, Calibrated c) {
    return Optional.ofNullable(c.point()).flatMap(point -> plant.place(sql, new PointId(point)));
  }

  private static Need need(Kind kind, Calibrated c, PointPlace place) {
    String tag = String.valueOf(c.tag());
    return new Need(
        "attention",
        6,
        "/loops/" + PathSegment.of(tag),
        tag,
        place.train().code() + ", " + place.site().name(),
        place.train().id().number(),
        kind.said(c),
        c.measuredAt(),
        "shop",
        kind.nextStep);
  }
}
