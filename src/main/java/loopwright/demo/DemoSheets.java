package loopwright.demo;

import java.math.BigDecimal;
import loopwright.alloy.AlloyBook;
import loopwright.datasheet.DataSheets;
import loopwright.datasheet.SheetDetails;
import loopwright.datasheet.Subject;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.matching.Approval;
import loopwright.matching.AreaClass;
import loopwright.matching.Connector;
import loopwright.matching.PartKind;
import loopwright.matching.PartSheet;
import loopwright.matching.Range;
import loopwright.plant.MachineId;
import loopwright.plant.Plant;
import loopwright.plant.Point;
import loopwright.plant.PointId;
import loopwright.plant.Surroundings;
import loopwright.register.Family;
import loopwright.register.FamilyBook;

/**
 * What no file brings into the invented plant: alloy groups, data sheets of every family, and the
 * temperatures around its loops. All of it fits: what is wrong in the plant is wrong elsewhere.
 */
public final class DemoSheets {
  private static final int AT_ONCE = 500;

  /** After API Std 670, from memory: probe and cable −35 to 120 °C, driver −35 to 65 °C. */
  private static final Range SENSOR = Range.of("-35", "120");

  private static final Range BOX = Range.of("-35", "65");
  private static final Range SUPPLY = Range.of("-26", "-17.5");
  private static final Connector PLUG = new Connector("miniature coaxial", Connector.Gender.MALE);
  private static final Connector SOCKET =
      new Connector("miniature coaxial", Connector.Gender.FEMALE);

  private DemoSheets() {}

  /** Into a plant that was just loaded. */
  public static void enter(
      Database database, Plant plant, FamilyBook families, DataSheets sheets, AlloyBook alloys) {
    Act act = Act.ofProgram("data sheets", "What the invented makers say of their parts.");
    database.write(
        act,
        tx -> {
          alloys.begin(tx);
          families.all(tx.sql()).forEach(family -> enter(tx, family, sheets));
          plant
              .pointsAfter(tx.sql(), new PointId(0), AT_ONCE)
              .forEach(point -> warm(tx, plant, point));
          return act;
        });
  }

  private static void enter(Tx tx, Family family, DataSheets sheets) {
    PartSheet sensor = PartSheet.NOT_GIVEN.withCelsius(SENSOR);
    record(tx, family, sheets, PartKind.PROBE, sensor.withConnectors(null, PLUG), Range.NOT_SAID);
    record(tx, family, sheets, PartKind.CABLE, sensor.withConnectors(SOCKET, PLUG), Range.NOT_SAID);
    PartSheet driver =
        PartSheet.NOT_GIVEN
            .withCelsius(BOX)
            .withConnectors(SOCKET, null)
            .withApproval(approval(family));
    record(tx, family, sheets, PartKind.DRIVER, driver, SUPPLY);
  }

  private static Approval approval(Family family) {
    return new Approval(
        "invented " + family.code(),
        Approval.Level.GC,
        AreaClass.GasGroup.IIC,
        AreaClass.TemperatureClass.T4,
        false,
        true);
  }

  private static void record(
      Tx tx, Family family, DataSheets sheets, PartKind kind, PartSheet sheet, Range supply) {
    SheetDetails details = new SheetDetails(sheet, supply, "invented sheet of " + family.code());
    sheets.record(tx, Subject.ofFamily(kind, family.id()), 0, details);
  }

  private static void warm(Tx tx, Plant plant, Point point) {
    Surroundings was = point.details().surroundings();
    Surroundings around =
        new Surroundings(
            was.shaftAlloy(),
            was.areaClass(),
            was.junctionBox(),
            BigDecimal.valueOf(85),
            BigDecimal.valueOf(60),
            BigDecimal.valueOf(40));
    MachineId machine = point.machine();
    plant.changePoint(
        tx,
        point.id(),
        point.version(),
        machine,
        point.details().but().surroundings(around).build());
  }
}
