package loopwright.calibration;

import java.time.Instant;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import loopwright.curve.Curve;
import loopwright.curve.CurveReading;
import loopwright.curve.Run;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.importing.ImportWorld;
import loopwright.loop.Chain;
import loopwright.loop.Content;
import loopwright.register.ToleranceProfiles;
import loopwright.testing.Engine;
import loopwright.testing.RawWorld;
import loopwright.testing.TestClock;
import loopwright.units.Reported;
import loopwright.units.Unit;

/**
 * A database with a point that holds probe, cable and driver, and one of which nothing is known;
 * {@link #another} makes such a pair again.
 */
public final class CalibrationWorld implements AutoCloseable {
  public static final Instant TAKEN = Instant.parse("2026-02-01T09:00:00Z");
  private static final Instant FITTED = Instant.parse("2026-01-01T09:00:00Z");
  private static final Act ACT = new Act(null, "A. Tester", "technician", "calibration", "outage");

  private final ImportWorld world;
  public final Calibrations calibrations;
  final ToleranceProfiles.Stored profile;
  private final long machine;
  private int pairs;
  long point;
  long bare;
  long probe;

  public CalibrationWorld(Engine engine) {
    world = new ImportWorld(engine, new TestClock("2026-03-01T10:00:00Z"));
    calibrations = world.calibrations;
    machine = write(tx -> RawWorld.machine(tx, "M"));
    profile = database().read(sql -> world.profiles.newest(sql, "api670-2mm")).orElseThrow();
    another();
  }

  public void another() {
    pairs++;
    write(this::pair);
  }

  private String pair(Tx tx) {
    point = RawWorld.point(tx, machine, tag());
    bare = RawWorld.point(tx, machine, "bare " + pairs);
    probe = RawWorld.component(tx, "probe", "PR-" + pairs);
    long cable = RawWorld.component(tx, "extension cable", "XC-" + pairs);
    long driver = RawWorld.component(tx, "driver", "DR-" + pairs);
    Chain chain =
        Chain.of(
            new Content.Part(probe), List.of(new Content.Part(cable)), new Content.Part(driver));
    world.configuration.survey(tx, point, chain, FITTED, "");
    return tag();
  }

  String tag() {
    return "V-" + pairs;
  }

  LatestAsLefts asLefts() {
    return new LatestAsLefts(
        new RegisteredProfiles(world.profiles, world.register, world.families, world.plant));
  }

  public Database database() {
    return world.database;
  }

  public <R> R write(Function<Tx, R> work) {
    return database().write(ACT, work);
  }

  public String keep(NewCalibration fresh) {
    return write(tx -> calibrations.keep(tx, fresh));
  }

  public Calibrated numbered(String number) {
    return database().read(sql -> calibrations.numbered(sql, number));
  }

  /** Readings at 10, 20, 30 … mil, as typed. */
  static List<CurveReading> readings(Run run, String... volts) {
    return IntStream.range(0, volts.length)
        .mapToObj(
            i ->
                CurveReading.of(
                    run,
                    Reported.read(Integer.toString(10 * (i + 1)), Unit.MIL).orElseThrow(),
                    Reported.read(volts[i], Unit.VOLT).orElseThrow()))
        .toList();
  }

  /** A synthetic curve of −0.2 V a mil whose last reading is given. */
  public NewCalibration curve(Stage stage, Instant at, String last) {
    String[] volts = "-2.00 -4.00 -6.00 -8.00 -10.00 -12.00 -14.00 -16.00 x".split(" ");
    volts[8] = last;
    Curve curve = new Curve(readings(Run.UP, volts));
    return of(
        point, stage, at, new NewCalibration.Measured(curve, profile.version(), profile.profile()));
  }

  public NewCalibration curve() {
    return curve(Stage.AS_FOUND, TAKEN, "-18.00");
  }

  static NewCalibration of(long point, Stage stage, Instant at, NewCalibration.Outcome outcome) {
    return new NewCalibration(
        point, stage, at, "A. Tester", Zero.MECHANICAL_TOUCH, "4140", outcome, "entered");
  }

  static List<String> typed(List<CurveReading> readings) {
    return readings.stream().map(r -> r.run().label() + " " + r.gap() + " " + r.output()).toList();
  }

  @Override
  public void close() {
    world.close();
  }
}
