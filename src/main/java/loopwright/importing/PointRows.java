package loopwright.importing;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import loopwright.db.Chunks;
import loopwright.plant.MachineId;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.PointDetails;
import loopwright.plant.PointId;
import loopwright.plant.PointKind;

/**
 * Rows of a points file: the point, where it is, and the monitor channel it is wired to. A row is
 * known by its tag. What a cell says is taken over, an empty cell leaves what is recorded.
 */
final class PointRows {
  private static final int AT_ONCE = 1_000;

  private final Planning planning;
  private final Plant plant;
  private final PlantCells plantCells;
  private final PointCells pointCells;
  private final ChannelRows channels;

  PointRows(Planning planning) {
    this.planning = planning;
    this.plant = planning.features.plant();
    this.plantCells = new PlantCells(planning);
    this.pointCells = new PointCells(planning);
    this.channels = new ChannelRows(planning);
  }

  /** What a row says. */
  private record Draft(
      RowCells row,
      String tag,
      World.Key key,
      Optional<PointKind> kind,
      UnaryOperator<PointDetails> details,
      Optional<PlantCells.Where> where,
      Optional<ChannelRows.Wiring> wiring) {}

  void plan(List<Sheet> sheets) {
    List<Draft> drafts = new ArrayList<>();
    for (Sheet sheet : sheets) {
      sheet.rows(planning.complaints).forEach(row -> draft(row).ifPresent(drafts::add));
    }
    Map<World.Key, Point> known = known(drafts);
    Map<World.Key, RowPlace> seen = new HashMap<>();
    for (Draft draft : drafts) {
      RowPlace first = seen.putIfAbsent(draft.key, draft.row.place());
      if (first != null) {
        draft.row.complain("tag", ImportProblem.TWICE, draft.tag, first);
      }
      decide(draft, Optional.ofNullable(known.get(draft.key)));
    }
    channels.tie();
  }

  private Optional<Draft> draft(RowCells row) {
    String tag = row.neededName("tag", "the tag of the point");
    Optional<PointKind> kind =
        row.choice("kind", Arrays.asList(PointKind.values()), PointKind::word);
    UnaryOperator<PointDetails> details = pointCells.read(row);
    Optional<PlantCells.Where> where = plantCells.read(row);
    ZoneId zone = where.map(PlantCells.Where::zone).orElse(java.time.ZoneOffset.UTC);
    Optional<ChannelRows.Wiring> wiring = channels.read(row, where, zone);
    if (tag.isEmpty()) {
      planning.refused(row, "");
      return Optional.empty();
    }
    return Optional.of(new Draft(row, tag, planning.tags.key(tag), kind, details, where, wiring));
  }

  private Map<World.Key, Point> known(List<Draft> drafts) {
    Map<World.Key, Point> known = new HashMap<>();
    List<String> tags = drafts.stream().map(Draft::tag).distinct().toList();
    for (List<String> some : Chunks.of(tags, AT_ONCE)) {
      plant
          .pointsTagged(planning.sql, some)
          .values()
          .forEach(point -> known.put(planning.tags.key(point.tag()), point));
    }
    known.forEach((key, point) -> planning.world.recorded(key, point.id().number()));
    return known;
  }

  private void decide(Draft draft, Optional<Point> known) {
    if (known.isEmpty() && draft.kind.isEmpty() && !draft.row.isFilled("kind")) {
      draft.row.complain("kind", ImportProblem.EMPTY_CELL, "what is measured there");
    }
    Optional<PointDetails> base =
        known.map(Point::details).or(() -> draft.kind.flatMap(kind -> fresh(draft, kind)));
    Optional<PointDetails> details =
        base.flatMap(was -> draft.row.attempt("place", () -> merged(draft, was)));
    if (!draft.row.isGood() || details.isEmpty() || draft.where.isEmpty()) {
      planning.world.refuse(draft.key, draft.row.place());
      planning.refused(draft.row, draft.tag);
    } else if (known.isPresent()) {
      compare(draft, known.get(), details.get(), draft.where.get());
    } else {
      add(draft, details.get(), draft.where.get());
    }
  }

  private static Optional<PointDetails> fresh(Draft draft, PointKind kind) {
    return draft.row.attempt("tag", () -> PointDetails.of(draft.tag, kind).build());
  }

  private static PointDetails merged(Draft draft, PointDetails was) {
    return draft.details.apply(was.but().kind(draft.kind.orElse(was.kind())).build());
  }

  private void add(Draft draft, PointDetails details, PlantCells.Where where) {
    long planned = planning.world.plan(draft.key, draft.row.place());
    planning.tags.planned(planned, draft.tag, where.zone());
    planning.steps.add(
        (tx, ids) -> {
          MachineId machine = new MachineId(ids.real(where.machine()));
          ids.made(planned, plant.addPoint(tx, machine, real(details, ids)).number());
        });
    draft.wiring.ifPresent(wiring -> channels.wire(draft.row, planned, Optional.empty(), wiring));
    planning.fate(RowFate.of(draft.row.place(), Fate.ADDED, draft.tag));
  }

  private static PointDetails real(PointDetails details, Ids ids) {
    return details.family() == null
        ? details
        : details
            .but()
            .family(new loopwright.register.FamilyId(ids.real(details.family().number())))
            .build();
  }

  private void compare(Draft draft, Point known, PointDetails details, PlantCells.Where where) {
    planning.tags.planned(known.id().number(), known.tag(), where.zone());
    List<FieldChange> changes = new ArrayList<>();
    if (known.machine().number() != where.machine()) {
      changes.add(new FieldChange("machine", machineName(known.id()), where.machineName()));
    }
    changes.addAll(
        FieldChange.between(
            PointText.of(known.details(), planning.familyCodes),
            PointText.of(details, planning.familyCodes)));
    if (!changes.isEmpty()) {
      planning.steps.add(
          (tx, ids) ->
              plant.changePoint(
                  tx,
                  known.id(),
                  known.version(),
                  new MachineId(ids.real(where.machine())),
                  real(details, ids)));
    }
    draft.wiring.ifPresent(
        wiring ->
            changes.addAll(
                channels.wire(draft.row, known.id().number(), Optional.of(known.id()), wiring)));
    if (!draft.row.isGood()) {
      planning.refused(draft.row, draft.tag);
    } else if (changes.isEmpty()) {
      planning.fate(RowFate.of(draft.row.place(), Fate.UNCHANGED, draft.tag));
    } else {
      planning.fate(RowFate.changed(draft.row.place(), draft.tag, changes));
    }
  }

  private String machineName(PointId point) {
    return plant
        .place(planning.sql, point)
        .map(at -> at.train().code() + " " + at.machine().code())
        .orElse("");
  }
}
