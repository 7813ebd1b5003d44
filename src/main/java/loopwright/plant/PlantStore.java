package loopwright.plant;

import static loopwright.db.gen.Tables.MACHINE;
import static loopwright.db.gen.Tables.POINT;
import static loopwright.db.gen.Tables.SITE;
import static loopwright.db.gen.Tables.TRAIN;

import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import loopwright.db.DbProblem;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.MachineRecord;
import loopwright.db.gen.tables.records.SiteRecord;
import loopwright.db.gen.tables.records.TrainRecord;
import loopwright.problem.Refused;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.impl.DSL;

/** Sites, trains and machines. */
final class PlantStore {

  List<Site> sites(DSLContext sql) {
    return sql.selectFrom(SITE).orderBy(SITE.CODE).fetch(PlantStore::site);
  }

  Optional<Site> site(DSLContext sql, SiteId id) {
    return sql.selectFrom(SITE).where(SITE.ID.eq(id.number())).fetchOptional(PlantStore::site);
  }

  Optional<Site> siteNamed(DSLContext sql, String code) {
    return sql.selectFrom(SITE).where(same(SITE.CODE, code)).fetchOptional(PlantStore::site);
  }

  private static Condition same(Field<String> column, String code) {
    return DSL.upper(column).eq(DSL.upper(DSL.val(code.strip())));
  }

  SiteId insert(Tx tx, SiteDetails details) {
    SiteRecord row = tx.row(SITE);
    fill(row, details);
    return new SiteId(tx.insert(row).getId());
  }

  void update(Tx tx, SiteId id, int version, SiteDetails details) {
    SiteRecord row =
        tx.sql()
            .fetchOptional(SITE, SITE.ID.eq(id.number()).and(SITE.VERSION.eq(version)))
            .orElseThrow(() -> new Refused(DbProblem.STALE));
    fill(row, details);
    tx.update(row);
  }

  private static void fill(SiteRecord row, SiteDetails details) {
    row.setCode(details.code());
    row.setName(details.name());
    row.setZone(details.zone().getId());
    row.setAdopting(details.adopting());
  }

  List<TrainRow> trains(DSLContext sql, SiteId site) {
    Field<Integer> machines =
        DSL.field(DSL.selectCount().from(MACHINE).where(MACHINE.TRAIN_ID.eq(TRAIN.ID)));
    Field<Integer> points =
        DSL.field(
            DSL.selectCount()
                .from(POINT)
                .join(MACHINE)
                .on(MACHINE.ID.eq(POINT.MACHINE_ID))
                .where(MACHINE.TRAIN_ID.eq(TRAIN.ID))
                .and(POINT.STATE.eq(PointState.IN_USE.word())));
    return sql.select(TRAIN.asterisk(), machines, points)
        .from(TRAIN)
        .where(TRAIN.SITE_ID.eq(site.number()))
        .orderBy(TRAIN.CODE)
        .fetch(row -> new TrainRow(train(row), row.get(machines), row.get(points)));
  }

  Optional<Train> train(DSLContext sql, TrainId id) {
    return sql.selectFrom(TRAIN).where(TRAIN.ID.eq(id.number())).fetchOptional(PlantStore::train);
  }

  Optional<Train> trainNamed(DSLContext sql, SiteId site, String code) {
    return sql.selectFrom(TRAIN)
        .where(TRAIN.SITE_ID.eq(site.number()))
        .and(same(TRAIN.CODE, code))
        .fetchOptional(PlantStore::train);
  }

  TrainId insert(Tx tx, SiteId site, String code, String name) {
    TrainRecord row = tx.row(TRAIN);
    row.setSiteId(site.number());
    row.setCode(code);
    row.setName(name);
    return new TrainId(tx.insert(row).getId());
  }

  /** In the order along the shaft. */
  List<Machine> machines(DSLContext sql, TrainId train) {
    return sql.selectFrom(MACHINE)
        .where(MACHINE.TRAIN_ID.eq(train.number()))
        .orderBy(MACHINE.PLACE_NO, MACHINE.CODE)
        .fetch(PlantStore::machine);
  }

  Optional<Machine> machine(DSLContext sql, MachineId id) {
    return sql.selectFrom(MACHINE)
        .where(MACHINE.ID.eq(id.number()))
        .fetchOptional(PlantStore::machine);
  }

  Optional<Machine> machineNamed(DSLContext sql, TrainId train, String code) {
    return sql.selectFrom(MACHINE)
        .where(MACHINE.TRAIN_ID.eq(train.number()))
        .and(same(MACHINE.CODE, code))
        .fetchOptional(PlantStore::machine);
  }

  MachineId insert(Tx tx, TrainId train, String code, String name, int place) {
    MachineRecord row = tx.row(MACHINE);
    row.setTrainId(train.number());
    row.setCode(code);
    row.setName(name);
    row.setPlaceNo((short) place);
    return new MachineId(tx.insert(row).getId());
  }

  static Site site(Record row) {
    return new Site(
        new SiteId(row.get(SITE.ID)),
        new SiteDetails(
            row.get(SITE.CODE),
            row.get(SITE.NAME),
            ZoneId.of(row.get(SITE.ZONE)),
            row.get(SITE.ADOPTING)),
        row.get(SITE.VERSION));
  }

  static Train train(Record row) {
    return new Train(
        new TrainId(row.get(TRAIN.ID)),
        new SiteId(row.get(TRAIN.SITE_ID)),
        row.get(TRAIN.CODE),
        row.get(TRAIN.NAME),
        row.get(TRAIN.VERSION));
  }

  static Machine machine(Record row) {
    return new Machine(
        new MachineId(row.get(MACHINE.ID)),
        new TrainId(row.get(MACHINE.TRAIN_ID)),
        row.get(MACHINE.CODE),
        row.get(MACHINE.NAME),
        row.get(MACHINE.PLACE_NO),
        row.get(MACHINE.VERSION));
  }
}
