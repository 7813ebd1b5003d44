package loopwright.importing;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.UnaryOperator;
import loopwright.plant.Facing;
import loopwright.plant.Mark;
import loopwright.plant.PhaseMark;
import loopwright.plant.PointDetails;
import loopwright.plant.PointKind;
import loopwright.plant.PointState;
import loopwright.plant.Rotation;
import loopwright.plant.Surroundings;
import loopwright.register.FamilyId;
import loopwright.units.Reported;
import loopwright.units.Unit;
import org.jspecify.annotations.Nullable;

/** What a row says of the point itself; an empty cell leaves what is recorded. */
final class PointCells {
  private final FamilyCells families;

  PointCells(Planning planning) {
    this.families = new FamilyCells(planning);
  }

  UnaryOperator<PointDetails> read(RowCells row) {
    UnaryOperator<Facing> facing = facing(row);
    UnaryOperator<PhaseMark> mark = mark(row);
    UnaryOperator<Surroundings> surroundings = surroundings(row);
    Optional<Long> family = families.named(row, "family");
    Optional<Reported> gap = gap(row);
    Optional<Integer> interval = row.whole("interval_months");
    Optional<PointState> state =
        row.choice("state", Arrays.asList(PointState.values()), PointState::word);
    String place = row.text("place");
    String pair = row.name("pair");
    return was ->
        was.but()
            .place(place.isEmpty() ? was.place() : place)
            .pairTag(pair.isEmpty() ? was.pairTag() : pair)
            .family(family.map(FamilyId::new).orElse(was.family()))
            .facing(facing.apply(was.facing()))
            .phaseMark(mark.apply(was.phaseMark()))
            .surroundings(surroundings.apply(was.surroundings()))
            .approvedGap(gap(was.approvedGap(), gap))
            .intervalMonths(interval.orElse(was.intervalMonths()))
            .state(state.orElse(was.state()))
            .build();
  }

  private static UnaryOperator<Facing> facing(RowCells row) {
    Optional<BigDecimal> angle =
        row.number("angle_deg", n -> new Facing(n, "", null, null)).map(Facing::angleDegrees);
    Optional<BigDecimal> ramp =
        row.number("ramp_deg", n -> new Facing(null, "", null, n)).map(Facing::rampDegrees);
    Optional<Rotation> rotation =
        row.choice("rotation", Arrays.asList(Rotation.values()), Rotation::word);
    String end = row.text("viewing_end");
    return was ->
        new Facing(
            angle.orElse(was.angleDegrees()),
            end.isEmpty() ? was.viewingEnd() : end,
            rotation.orElse(was.rotation()),
            ramp.orElse(was.rampDegrees()));
  }

  private static UnaryOperator<PhaseMark> mark(RowCells row) {
    Optional<Mark> mark = row.choice("mark", Arrays.asList(Mark.values()), Mark::word);
    Optional<Integer> events =
        row.whole("events_per_turn")
            .flatMap(n -> row.attempt("events_per_turn", () -> new PhaseMark(null, n, null)))
            .map(PhaseMark::eventsPerTurn);
    Optional<BigDecimal> threshold =
        row.number("threshold_v", n -> new PhaseMark(null, null, n)).map(PhaseMark::thresholdVolts);
    return was ->
        new PhaseMark(
            mark.orElse(was.mark()),
            events.orElse(was.eventsPerTurn()),
            threshold.orElse(was.thresholdVolts()));
  }

  private static UnaryOperator<Surroundings> surroundings(RowCells row) {
    Optional<BigDecimal> tip = temperature(row, "tip_temp_c");
    Optional<BigDecimal> route = temperature(row, "route_temp_c");
    Optional<BigDecimal> box = temperature(row, "box_temp_c");
    String alloy = row.text("shaft_alloy");
    String area = row.text("area_class");
    String junction = row.text("junction_box");
    return was ->
        new Surroundings(
            alloy.isEmpty() ? was.shaftAlloy() : alloy,
            area.isEmpty() ? was.areaClass() : area,
            junction.isEmpty() ? was.junctionBox() : junction,
            tip.orElse(was.tipCelsius()),
            route.orElse(was.routeCelsius()),
            box.orElse(was.boxCelsius()));
  }

  private static Optional<BigDecimal> temperature(RowCells row, String heading) {
    return row.number(heading, n -> new Surroundings("", "", "", n, null, null))
        .map(Surroundings::tipCelsius);
  }

  private static Optional<Reported> gap(RowCells row) {
    Optional<Reported> gap =
        row.quantity("approved_gap_um", Unit.MICROMETRE, "approved_gap_mil", Unit.MIL);
    return gap.flatMap(
        typed ->
            row.attempt(
                typed.unit() == Unit.MIL ? "approved_gap_mil" : "approved_gap_um",
                () -> {
                  PointDetails.of("any", PointKind.RADIAL).approvedGap(typed).build();
                  return typed;
                }));
  }

  /** The same gap in other words is no change. */
  private static @Nullable Reported gap(@Nullable Reported was, Optional<Reported> said) {
    boolean same = was != null && said.filter(g -> g.canonical() == was.canonical()).isPresent();
    return same ? was : said.orElse(was);
  }
}
