package loopwright.testing;

import static loopwright.db.gen.Tables.COMPONENT;
import static loopwright.db.gen.Tables.MACHINE;
import static loopwright.db.gen.Tables.POINT;
import static loopwright.db.gen.Tables.SITE;
import static loopwright.db.gen.Tables.TRAIN;

import java.util.Locale;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.ComponentRecord;
import loopwright.db.gen.tables.records.MachineRecord;
import loopwright.db.gen.tables.records.PointRecord;
import loopwright.db.gen.tables.records.SiteRecord;
import loopwright.db.gen.tables.records.TrainRecord;

/** The barest rows that other rows need, for store tests that are not about them. */
public final class RawWorld {
  private RawWorld() {}

  /** A machine on a train at a site, all named after the code. */
  public static long machine(Tx tx, String code) {
    SiteRecord site = tx.row(SITE);
    site.setCode(code);
    site.setName("Site " + code);
    site.setZone("Europe/Berlin");
    tx.insert(site);
    TrainRecord train = tx.row(TRAIN);
    train.setSiteId(site.getId());
    train.setCode(code);
    train.setName("Train " + code);
    tx.insert(train);
    MachineRecord machine = tx.row(MACHINE);
    machine.setTrainId(train.getId());
    machine.setCode(code);
    machine.setName("Machine " + code);
    return tx.insert(machine).getId();
  }

  public static long point(Tx tx, long machine, String tag) {
    PointRecord point = tx.row(POINT);
    point.setMachineId(machine);
    point.setTag(tag);
    point.setTagKey(tag.toUpperCase(Locale.ROOT));
    point.setKind("radial vibration");
    return tx.insert(point).getId();
  }

  public static long component(Tx tx, String kind, String serial) {
    ComponentRecord component = tx.row(COMPONENT);
    component.setKind(kind);
    component.setMaker("Anyone");
    component.setModel("Any");
    component.setSerial(serial);
    component.setLabel(serial);
    component.setLabelKey(serial.toUpperCase(Locale.ROOT));
    component.setIdentityKey("ANYONE|ANY|" + serial.toUpperCase(Locale.ROOT));
    component.setState("in stock");
    return tx.insert(component).getId();
  }
}
