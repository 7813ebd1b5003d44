package loopwright.plant;

import static loopwright.db.gen.Tables.MACHINE;
import static loopwright.db.gen.Tables.POINT;
import static loopwright.db.gen.Tables.SITE;
import static loopwright.db.gen.Tables.TRAIN;

import java.time.ZoneId;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.db.Capitals;
import loopwright.db.Chunks;
import loopwright.db.DbProblem;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.PointRecord;
import loopwright.problem.Refused;
import loopwright.register.FamilyId;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.Unit;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/** Points. */
final class PointStore {
  private static final int AT_ONCE = 500;

  Optional<Point> point(DSLContext sql, PointId id) {
    return sql.selectFrom(POINT).where(POINT.ID.eq(id.number())).fetchOptional(PointStore::point);
  }

  List<Point> points(DSLContext sql, Collection<Long> numbers) {
    return sql.selectFrom(POINT).where(POINT.ID.in(numbers)).fetch(PointStore::point);
  }

  Optional<Point> tagged(DSLContext sql, String tag) {
    return sql.selectFrom(POINT)
        .where(POINT.TAG_KEY.eq(key(sql, tag)))
        .fetchOptional(PointStore::point);
  }

  /** Whose tag, or else whose place, holds that text; tags that begin with it first. */
  List<Point> holding(DSLContext sql, String text, int most) {
    String key = key(sql, text);
    return sql.selectFrom(POINT)
        .where(POINT.TAG_KEY.contains(key).or(DSL.upper(POINT.PLACE).contains(key)))
        .orderBy(
            DSL.when(POINT.TAG_KEY.startsWith(key), 0)
                .when(POINT.TAG_KEY.contains(key), 1)
                .otherwise(2),
            POINT.TAG_KEY)
        .limit(most)
        .fetch(PointStore::point);
  }

  /** By the tag in capitals. */
  Map<String, Point> tagged(DSLContext sql, Collection<String> tags) {
    List<String> keys = tags.stream().map(tag -> key(sql, tag)).toList();
    return sql.selectFrom(POINT)
        .where(POINT.TAG_KEY.in(keys))
        .fetchMap(POINT.TAG_KEY, PointStore::point);
  }

  Map<String, Point> asTyped(DSLContext sql, Collection<String> tags) {
    Map<String, String> keys = Capitals.of(sql, tags.stream().map(String::strip).toList());
    Map<String, Point> byKey =
        sql.selectFrom(POINT)
            .where(POINT.TAG_KEY.in(Set.copyOf(keys.values())))
            .fetchMap(POINT.TAG_KEY, PointStore::point);
    Map<String, Point> found = new HashMap<>();
    for (String tag : tags) {
      Point point = byKey.get(keys.get(tag.strip()));
      if (point != null) {
        found.put(tag, point);
      }
    }
    return found;
  }

  /** Of the machines of a train, machine by machine along the shaft. */
  Map<Long, List<Point>> ofTrain(DSLContext sql, TrainId train) {
    return sql.select(POINT.asterisk())
        .from(POINT)
        .join(MACHINE)
        .on(MACHINE.ID.eq(POINT.MACHINE_ID))
        .where(MACHINE.TRAIN_ID.eq(train.number()))
        .orderBy(POINT.TAG_KEY)
        .fetchGroups(POINT.MACHINE_ID, PointStore::point);
  }

  Set<Long> inUse(DSLContext sql, boolean knowingAlloy) {
    return sql.select(POINT.ID)
        .from(POINT)
        .where(POINT.STATE.eq(PointState.IN_USE.word()))
        .and(knowingAlloy ? POINT.SHAFT_ALLOY.isNotNull() : DSL.noCondition())
        .fetchSet(POINT.ID);
  }

  List<Point> after(DSLContext sql, PointId last, int most) {
    return sql.selectFrom(POINT)
        .where(POINT.ID.gt(last.number()))
        .orderBy(POINT.ID)
        .limit(most)
        .fetch(PointStore::point);
  }

  Optional<PointPlace> place(DSLContext sql, PointId id) {
    return sql.select(SITE.asterisk(), TRAIN.asterisk(), MACHINE.asterisk())
        .from(POINT)
        .join(MACHINE)
        .on(MACHINE.ID.eq(POINT.MACHINE_ID))
        .join(TRAIN)
        .on(TRAIN.ID.eq(MACHINE.TRAIN_ID))
        .join(SITE)
        .on(SITE.ID.eq(TRAIN.SITE_ID))
        .where(POINT.ID.eq(id.number()))
        .fetchOptional(
            row ->
                new PointPlace(
                    PlantStore.site(row), PlantStore.train(row), PlantStore.machine(row)));
  }

  /** Of the sites where these points are, by the points' numbers. */
  Map<Long, ZoneId> zones(DSLContext sql, Collection<Long> points) {
    Map<Long, ZoneId> zones = new HashMap<>();
    for (List<Long> some : Chunks.of(points, AT_ONCE)) {
      sql.select(POINT.ID, SITE.ZONE)
          .from(POINT)
          .join(MACHINE)
          .on(MACHINE.ID.eq(POINT.MACHINE_ID))
          .join(TRAIN)
          .on(TRAIN.ID.eq(MACHINE.TRAIN_ID))
          .join(SITE)
          .on(SITE.ID.eq(TRAIN.SITE_ID))
          .where(POINT.ID.in(some))
          .forEach(row -> zones.put(row.value1(), ZoneId.of(row.value2())));
    }
    return zones;
  }

  static String key(DSLContext sql, String tag) {
    return Capitals.of(sql, tag.strip());
  }

  PointId insert(Tx tx, MachineId machine, PointDetails details) {
    PointRecord row = tx.row(POINT);
    fill(tx, row, machine, details);
    return new PointId(tx.insert(row).getId());
  }

  void update(Tx tx, PointId id, int version, MachineId machine, PointDetails details) {
    PointRecord row =
        tx.sql()
            .fetchOptional(POINT, POINT.ID.eq(id.number()).and(POINT.VERSION.eq(version)))
            .orElseThrow(() -> new Refused(DbProblem.STALE));
    fill(tx, row, machine, details);
    tx.update(row);
  }

  private static void fill(Tx tx, PointRecord row, MachineId machine, PointDetails details) {
    row.setMachineId(machine.number());
    row.setTag(details.tag());
    row.setTagKey(key(tx.sql(), details.tag()));
    row.setKind(details.kind().word());
    row.setPlace(details.place());
    row.setFamilyId(details.family() == null ? null : details.family().number());
    row.setPairTag(absent(details.pairTag()));
    row.setIntervalMonths(
        details.intervalMonths() == null ? null : details.intervalMonths().shortValue());
    row.setState(details.state().word());
    fillGap(row, details.approvedGap());
    fillFacing(row, details.facing());
    fillMark(row, details.phaseMark());
    fillSurroundings(row, details.surroundings());
  }

  private static void fillGap(PointRecord row, @Nullable Reported gap) {
    row.setApprovedGapTyped(gap == null ? null : gap.typed());
    row.setApprovedGapUnit(gap == null ? null : gap.unit().symbol());
    row.setApprovedGapUm(gap == null ? null : gap.canonical());
  }

  private static void fillFacing(PointRecord row, Facing facing) {
    row.setAngleDegrees(facing.angleDegrees());
    row.setViewingEnd(absent(facing.viewingEnd()));
    row.setRotation(facing.rotation() == null ? null : facing.rotation().word());
    row.setRampAngleDegrees(facing.rampDegrees());
  }

  private static void fillMark(PointRecord row, PhaseMark mark) {
    row.setMark(mark.mark() == null ? null : mark.mark().word());
    row.setEventsPerTurn(mark.eventsPerTurn());
    row.setThresholdVolts(mark.thresholdVolts());
  }

  private static void fillSurroundings(PointRecord row, Surroundings around) {
    row.setShaftAlloy(absent(around.shaftAlloy()));
    row.setAreaClass(absent(around.areaClass()));
    row.setJunctionBox(absent(around.junctionBox()));
    row.setTipTemperatureC(around.tipCelsius());
    row.setRouteTemperatureC(around.routeCelsius());
    row.setBoxTemperatureC(around.boxCelsius());
  }

  private static @Nullable String absent(String text) {
    return text.isEmpty() ? null : text;
  }

  static Point point(Record row) {
    return new Point(
        new PointId(row.get(POINT.ID)),
        new MachineId(row.get(POINT.MACHINE_ID)),
        details(row.into(POINT)),
        row.get(POINT.VERSION));
  }

  private static PointDetails details(PointRecord row) {
    return PointDetails.of(row.getTag(), PointKind.named(row.getKind()).orElseThrow())
        .place(row.getPlace())
        .family(row.getFamilyId() == null ? null : new FamilyId(row.getFamilyId()))
        .pairTag(present(row.getPairTag()))
        .facing(facing(row))
        .phaseMark(mark(row))
        .surroundings(surroundings(row))
        .approvedGap(gap(row))
        .intervalMonths(row.getIntervalMonths() == null ? null : (int) row.getIntervalMonths())
        .state(PointState.named(row.getState()).orElseThrow())
        .build();
  }

  private static Facing facing(PointRecord row) {
    return new Facing(
        row.getAngleDegrees(),
        present(row.getViewingEnd()),
        row.getRotation() == null ? null : Rotation.named(row.getRotation()).orElseThrow(),
        row.getRampAngleDegrees());
  }

  private static PhaseMark mark(PointRecord row) {
    return new PhaseMark(
        row.getMark() == null ? null : Mark.named(row.getMark()).orElseThrow(),
        row.getEventsPerTurn(),
        row.getThresholdVolts());
  }

  private static Surroundings surroundings(PointRecord row) {
    return new Surroundings(
        present(row.getShaftAlloy()),
        present(row.getAreaClass()),
        present(row.getJunctionBox()),
        row.getTipTemperatureC(),
        row.getRouteTemperatureC(),
        row.getBoxTemperatureC());
  }

  private static @Nullable Reported gap(PointRecord row) {
    String typed = row.getApprovedGapTyped();
    if (typed == null) {
      return null;
    }
    Unit unit = Unit.named(row.getApprovedGapUnit()).orElseThrow();
    return new Reported(typed, unit, Numbers.read(typed).orElseThrow());
  }

  private static String present(@Nullable String text) {
    return text == null ? "" : text;
  }
}
