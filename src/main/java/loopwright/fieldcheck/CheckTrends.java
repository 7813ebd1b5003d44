package loopwright.fieldcheck;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import loopwright.dynamic.DynamicReading;
import loopwright.print.StackPicture.Mark;
import loopwright.print.StackPicture.Pane;
import loopwright.print.StackPicture.Spot;
import loopwright.print.StackPicture.Stroke;
import loopwright.print.StackPicture.Trail;
import loopwright.time.Viewpoint;
import loopwright.trend.Observation;
import loopwright.units.Unit;
import loopwright.web.UnitsShown;
import org.jooq.DSLContext;

/**
 * Readings and checks of a loop over the years, as panes of a drawing. Gap voltages are followed by
 * state, place and warmth, because others don't compare.
 */
public final class CheckTrends {
  private static final int MOST = 400;

  private static final List<Mark> MARKS = List.of(Mark.PLAIN, Mark.OTHER, Mark.NOT_JUDGED);

  /** One value makes no trend. */
  private static final int FEWEST = 2;

  private final GapReadings readings;
  private final FieldChecks checks;

  public CheckTrends(GapReadings readings, FieldChecks checks) {
    this.readings = readings;
    this.checks = checks;
  }

  /**
   * A figure that is followed.
   *
   * @param item of the check's form; of the dynamic check its sensitivity is followed
   */
  private record Figure(
      CheckKind kind, String item, String title, Unit metric, Unit mil, String words) {
    Optional<Double> of(FieldCheck check, UnitsShown units) {
      Optional<Double> canonical =
          kind == CheckKind.DYNAMIC
              ? Sines.reading(check.entries()).map(DynamicReading::sensitivity)
              : check.entries().amount(item);
      return canonical.map(unit(units)::fromCanonical);
    }

    Unit unit(UnitsShown units) {
      return units.metric() ? metric : mil;
    }
  }

  private static final List<Figure> FIGURES =
      List.of(
          new Figure(
              CheckKind.ELECTRICAL, "supply", "Supply at the driver", Unit.VOLT, Unit.VOLT, ""),
          new Figure(
              CheckKind.ELECTRICAL, "coil", "Probe, centre to outer", Unit.OHM, Unit.OHM, ""),
          new Figure(
              CheckKind.ELECTRICAL, "loop", "Probe with extension cable", Unit.OHM, Unit.OHM, ""),
          new Figure(CheckKind.ELECTRICAL, "shield", "Shield, end to end", Unit.OHM, Unit.OHM, ""),
          new Figure(CheckKind.CHANNEL, "alert", "Alert acted at", Unit.MICROMETRE, Unit.MIL, ""),
          new Figure(CheckKind.CHANNEL, "danger", "Danger acted at", Unit.MICROMETRE, Unit.MIL, ""),
          new Figure(
              CheckKind.SLOW_ROLL, "amplitude", "Slow roll", Unit.MICROMETRE, Unit.MIL, "pk-pk"),
          new Figure(
              CheckKind.DYNAMIC,
              "",
              "Dynamic sensitivity",
              Unit.MILLIVOLT_PER_MICROMETRE,
              Unit.MILLIVOLT_PER_MIL,
              "at the frequency of each check"));

  /** Panes of all that was read twice at least, along years as {@link Observation#years}. */
  public List<Pane> panes(DSLContext sql, long point, UnitsShown units) {
    List<Pane> panes = new ArrayList<>();
    gapVoltages(sql, point).ifPresent(panes::add);
    List<FieldCheck> rising = new ArrayList<>(checks.ofPoint(sql, point, Viewpoint.LATEST, MOST));
    Collections.reverse(rising);
    FIGURES.forEach(figure -> pane(figure, rising, units).ifPresent(panes::add));
    return panes;
  }

  private Optional<Pane> gapVoltages(DSLContext sql, long point) {
    List<GapReading> rising = new ArrayList<>(readings.ofPoint(sql, point, Viewpoint.LATEST, MOST));
    Collections.reverse(rising);
    Map<String, List<Spot>> alike = new LinkedHashMap<>();
    for (GapReading each : rising) {
      List<Spot> spots = alike.computeIfAbsent(state(each), state -> new ArrayList<>());
      Mark mark = MARKS.get(List.copyOf(alike.keySet()).indexOf(state(each)) % MARKS.size());
      spots.add(new Spot(Observation.years(each.readAt()), each.volts().canonical(), mark));
    }
    return rising.size() < FEWEST
        ? Optional.empty()
        : Optional.of(
            new Pane(
                "Gap voltage, V",
                "like with like",
                List.of(),
                alike.entrySet().stream()
                    .map(each -> new Trail(each.getKey(), Stroke.BROKEN, each.getValue()))
                    .toList()));
  }

  private static String state(GapReading reading) {
    String warmth = reading.warmth() == Warmth.NOT_RECORDED ? "" : ", " + reading.warmth().word();
    return reading.state().label() + warmth + ", at the " + reading.tappedAt().label();
  }

  private static Optional<Pane> pane(Figure figure, List<FieldCheck> rising, UnitsShown units) {
    Function<FieldCheck, Optional<Spot>> spot =
        check ->
            figure
                .of(check, units)
                .map(value -> new Spot(Observation.years(check.takenAt()), value, Mark.PLAIN));
    List<Spot> spots =
        rising.stream()
            .filter(check -> check.kind() == figure.kind())
            .flatMap(check -> spot.apply(check).stream())
            .toList();
    return spots.size() < FEWEST
        ? Optional.empty()
        : Optional.of(
            new Pane(
                figure.title() + ", " + figure.unit(units).symbol(),
                figure.words(),
                List.of(),
                List.of(new Trail("", Stroke.BROKEN, spots))));
  }
}
