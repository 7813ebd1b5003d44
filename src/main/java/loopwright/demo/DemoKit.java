package loopwright.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import loopwright.calibration.Calibrations;
import loopwright.calibration.NewCalibration;
import loopwright.calibration.Stage;
import loopwright.calibration.TakenWith;
import loopwright.calibration.Zero;
import loopwright.curve.Curve;
import loopwright.curve.CurveReading;
import loopwright.curve.Run;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.kit.Kits;
import loopwright.loop.Content;
import loopwright.loop.PartSet;
import loopwright.loop.Slot;
import loopwright.register.ComponentId;
import loopwright.register.Register;
import loopwright.register.Shelf;
import loopwright.register.ToleranceProfiles;
import loopwright.units.Reported;
import loopwright.units.Unit;
import org.jooq.DSLContext;

/** A spare set of the invented shop: measured together on the bench, and kept together. */
public final class DemoKit {
  private static final Duration BEFORE = Duration.ofDays(40);
  private static final List<String> VOLTS =
      List.of("-2.02", "-4.03", "-6.01", "-8.02", "-10.00", "-12.01", "-14.03", "-16.01", "-18.05");

  private static final Shelf SHELF = new Shelf("Halvenmouth store", "K-01");

  private DemoKit() {}

  /** Enters the set's curve, synthetic, and makes the kit. */
  public static void keep(
      Database database,
      Register register,
      ToleranceProfiles profiles,
      Calibrations calibrations,
      Kits kits,
      InstantSource clock) {
    Instant then = clock.instant().minus(BEFORE);
    database.write(
        Act.ofProgram("spare set", "Measured on the bench and put into one bag."),
        tx -> {
          PartSet set = set(tx.sql(), register);
          ToleranceProfiles.Stored profile = profiles.newest(tx.sql(), "api670-2mm").orElseThrow();
          NewCalibration.Measured curve =
              new NewCalibration.Measured(curve(), profile.version(), profile.profile());
          calibrations.keep(
              tx,
              new NewCalibration(
                      0,
                      Stage.AS_LEFT,
                      then,
                      "Bench of the invented shop",
                      Zero.MECHANICAL_TOUCH,
                      "4140",
                      curve,
                      "entered")
                  .of(new TakenWith.Bench(set)));
          set.components()
              .forEach(part -> register.putAway(tx, new ComponentId(part), then, SHELF, ""));
          return kits.make(tx, "Blower spare", set, "In one bag, curve inside.");
        });
  }

  private static PartSet set(DSLContext sql, Register register) {
    Map<Slot, Content.Part> parts = new EnumMap<>(Slot.class);
    parts.put(Slot.PROBE, part(sql, register, "0042986"));
    parts.put(Slot.PATH_1, part(sql, register, "0043210"));
    parts.put(Slot.DRIVER, part(sql, register, "0043288"));
    return new PartSet(parts);
  }

  private static Content.Part part(DSLContext sql, Register register, String serial) {
    return new Content.Part(register.labelled(sql, serial).get(0).id().number());
  }

  private static Curve curve() {
    List<CurveReading> readings = new ArrayList<>();
    for (String volts : VOLTS) {
      String gap = Integer.toString(10 * (readings.size() + 1));
      readings.add(
          CurveReading.of(
              Run.UP,
              Reported.read(gap, Unit.MIL).orElseThrow(),
              Reported.read(volts, Unit.VOLT).orElseThrow()));
    }
    return new Curve(readings);
  }
}
