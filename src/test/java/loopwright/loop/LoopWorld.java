package loopwright.loop;

import java.math.BigDecimal;
import java.time.Instant;
import loopwright.matching.Evidence;
import loopwright.matching.PartKind;
import loopwright.register.ComponentDetails;
import loopwright.register.ComponentFacts;
import loopwright.register.ComponentId;
import loopwright.register.FactsWatch;
import loopwright.register.FamilyBook;
import loopwright.register.FamilyDetails;
import loopwright.register.NewComponent;
import loopwright.register.NominalLength;
import loopwright.register.PartIdentity;
import loopwright.register.Register;
import loopwright.testing.RawWorld;
import loopwright.testing.RunningApp;
import loopwright.testing.Visitor;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;

/**
 * A running program with one train of three points and parts that fit one another: probes PR-1 to
 * PR-3 of 1 m, cables XC-1 to XC-4 of 4 m (XC-9 of 4.5 m), drivers DR-1 to DR-3 for 5 m.
 */
public final class LoopWorld implements AutoCloseable {
  private static final Instant FROM = Instant.parse("2026-01-10T05:00:00Z");

  public final RunningApp app = new RunningApp();
  public final Register register = new Register(FactsWatch.NOBODY);
  public final Visitor technician;

  public LoopWorld() {
    app.write(
        tx -> {
          FamilyDetails q8 =
              FamilyDetails.of("Q8", "8 mm", "Nordling", ScaleFactor.millivoltsPerMil("200"))
                  .build();
          new FamilyBook().add(tx, q8);
          long machine = RawWorld.machine(tx, "K-301");
          for (int i = 1; i <= 3; i++) {
            RawWorld.point(tx, machine, "K301-VX" + i);
          }
          return machine;
        });
    for (int i = 1; i <= 3; i++) {
      part(PartKind.PROBE, "PR-" + i, "1.0");
      part(PartKind.DRIVER, "DR-" + i, "5.0");
    }
    for (int i = 1; i <= 4; i++) {
      part(PartKind.CABLE, "XC-" + i, "4.0");
    }
    part(PartKind.CABLE, "XC-9", "4.5");
    technician = app.as("technician");
  }

  private ComponentId part(PartKind kind, String serial, String metres) {
    ComponentFacts facts =
        ComponentFacts.NOTHING_KNOWN
            .withLength(NominalLength.read(metres, Unit.METRE, Evidence.READ_ON_PART))
            .withTip(kind == PartKind.CABLE ? null : new BigDecimal("8"))
            .withScaleFactor(kind == PartKind.CABLE ? null : ScaleFactor.millivoltsPerMil("200"));
    ComponentDetails details =
        ComponentDetails.of(kind, new PartIdentity("Nordling", "N-" + kind, serial, ""));
    return app.write(
        tx ->
            register.add(
                tx,
                new NewComponent(
                    details,
                    facts.withFamily(new FamilyBook().named(tx.sql(), "Q8").orElseThrow().id()),
                    FROM)));
  }

  public ComponentId id(String serial) {
    return app.database().read(sql -> register.labelled(sql, serial)).get(0).id();
  }

  /** Posts a survey of point {@code K301-VXn}; the parts' numbers are the serials' ends. */
  public Visitor.Answer survey(int point, String day, String time, String cable) {
    return change("survey", point, day, time, "PR-" + point, cable, "DR-" + point);
  }

  public Visitor.Answer change(
      String way, int point, String day, String time, String probe, String cable, String driver) {
    String path = "/loops/K301-VX" + point + "/" + way;
    String version = technician.get(path).page().select("input[name=version]").attr("value");
    return technician.post(
        path,
        "version",
        version,
        "probe",
        probe,
        "path-1",
        cable,
        "driver",
        driver,
        "on",
        day,
        "time",
        time,
        "reason",
        "seen at the junction box");
  }

  @Override
  public void close() {
    app.close();
  }
}
