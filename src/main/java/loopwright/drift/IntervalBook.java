package loopwright.drift;

import java.time.InstantSource;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Calibrations;
import loopwright.calibration.RegisteredProfiles;
import loopwright.curve.ToleranceProfile;
import loopwright.drift.DriftSeries.Entry;
import loopwright.loop.Combinations;
import loopwright.loop.Configuration;
import loopwright.loop.DueLoops;
import loopwright.plant.Point;
import loopwright.trend.IntervalAdvice;
import loopwright.trend.Segment;
import loopwright.trend.Trend;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/** The interval of a point, and the one its history suggests. Nothing is changed by it. */
final class IntervalBook {
  private final Calibrations calibrations;
  private final RegisteredProfiles profiles;
  private final Configuration configuration;
  private final DueLoops due;
  private final InstantSource clock;

  IntervalBook(
      Calibrations calibrations,
      RegisteredProfiles profiles,
      Configuration configuration,
      DueLoops due,
      InstantSource clock) {
    this.calibrations = calibrations;
    this.profiles = profiles;
    this.configuration = configuration;
    this.due = due;
    this.clock = clock;
  }

  DriftShown.Advice advice(DSLContext sql, Point point, List<Entry> entries) {
    Integer months = point.details().intervalMonths();
    String edit = "/points/" + point.id().number() + "/edit";
    String dueOn = due.of(sql, point.id().number()).map(LocalDate::toString).orElse("not known");
    if (months == null) {
      return new DriftShown.Advice("none is on record", dueOn, "", List.of(), edit);
    }
    IntervalAdvice advice = advice(sql, point, months, entries);
    return new DriftShown.Advice(
        months + " months",
        dueOn,
        advice.months().isPresent() ? advice.months().getAsInt() + " months" : "",
        advice.reasons(),
        edit);
  }

  private IntervalAdvice advice(DSLContext sql, Point point, int months, List<Entry> entries) {
    return tolerance(sql, entries)
        .map(profile -> IntervalAdvice.of(known(sql, point, months, entries, profile)))
        .orElse(
            new IntervalAdvice(
                OptionalInt.empty(),
                List.of(
                    new IntervalAdvice.Reason(
                        "all", "No curve is on record.", OptionalInt.empty()))));
  }

  /** The profile that judged the newest curve. */
  private Optional<ToleranceProfile> tolerance(DSLContext sql, List<Entry> entries) {
    List<Entry> counted = DriftSeries.counted(entries);
    if (counted.isEmpty()) {
      return Optional.empty();
    }
    Calibrated newest = counted.get(counted.size() - 1).calibrated();
    return calibrations
        .curve(sql, newest)
        .flatMap(curve -> profiles.judged(sql, newest, curve))
        .map(result -> result.profile());
  }

  private IntervalAdvice.Known known(
      DSLContext sql, Point point, int months, List<Entry> entries, ToleranceProfile profile) {
    double tolerance = profile.slope() * profile.isfTolerancePercent().doubleValue() / 100;
    return new IntervalAdvice.Known(
        months,
        DriftSeries.foundWithin(entries),
        ofPresentParts(sql, point, DriftDrawing.trend(entries, Figure.ASF, UnitsShown.METRIC)),
        tolerance,
        profile.slope());
  }

  /** What former parts did says nothing of those fitted now. */
  private Optional<Segment> ofPresentParts(DSLContext sql, Point point, Trend trend) {
    return Combinations.fingerprint(configuration.at(sql, point.id().number(), clock.instant()))
        .map(trend::of)
        .orElse(trend.latest());
  }
}
