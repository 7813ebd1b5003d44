package loopwright.loop;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import loopwright.db.Act;
import loopwright.db.Tx;
import loopwright.importing.ImportWorld;
import loopwright.matching.Evidence;
import loopwright.matching.Finding;
import loopwright.matching.PartKind;
import loopwright.plant.Channel;
import loopwright.plant.ChannelId;
import loopwright.plant.ChannelRole;
import loopwright.plant.ChannelSetting;
import loopwright.plant.Direction;
import loopwright.plant.Limits;
import loopwright.plant.MachineId;
import loopwright.plant.Point;
import loopwright.plant.PointDetails;
import loopwright.plant.PointId;
import loopwright.plant.PointKind;
import loopwright.plant.SettingBasis;
import loopwright.plant.SiteDetails;
import loopwright.plant.SiteId;
import loopwright.register.ComponentDetails;
import loopwright.register.ComponentFacts;
import loopwright.register.FamilyDetails;
import loopwright.register.FamilyId;
import loopwright.register.LinearRange;
import loopwright.register.NewComponent;
import loopwright.register.NominalLength;
import loopwright.register.PartIdentity;
import loopwright.testing.Engine;
import loopwright.testing.TestClock;
import loopwright.units.Reported;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;

/** A database with one loop in balance, of which more and more can be said. */
public final class OneLoop implements AutoCloseable {
  public static final Instant NOW = Instant.parse("2026-03-01T10:15:30Z");
  static final Instant BUILT = Instant.parse("2026-01-10T05:00:00Z");

  public final ImportWorld world;
  final SiteId site;
  public final PointId point;
  final FamilyId family;
  final MachineId machine;
  private int channels;

  public OneLoop(Engine engine) {
    world = new ImportWorld(engine, new TestClock(NOW.toString()));
    site =
        write(
            tx ->
                world.plant.addSite(
                    tx, new SiteDetails("MARSH", "Test Marsh", ZoneId.of("Europe/Berlin"), false)));
    machine =
        write(
            tx ->
                world.plant.addMachine(
                    tx, world.plant.addTrain(tx, site, "K-1", "Train"), "T", "Turbine", 1));
    family = write(tx -> world.families.add(tx, family().build()));
    point =
        write(
            tx ->
                world.plant.addPoint(
                    tx, machine, PointDetails.of("V-1", PointKind.RADIAL).build()));
    long probe = part(PartKind.PROBE, "P-1", "1");
    long cable = part(PartKind.CABLE, "C-1", "4");
    long driver = part(PartKind.DRIVER, "D-1", "5");
    Chain chain =
        Chain.of(
            new Content.Part(probe), List.of(new Content.Part(cable)), new Content.Part(driver));
    write(tx -> world.configuration.survey(tx, point.number(), chain, BUILT, ""));
  }

  /** 200 mV/mil from 250 to 2,250 µm, −2 V at the near end. */
  public static FamilyDetails.Builder family() {
    return FamilyDetails.of("Q8", "8 mm", "Nordling", ScaleFactor.millivoltsPerMil("200"))
        .range(new LinearRange(250.0, 2250.0))
        .startVolts(new BigDecimal("-2"));
  }

  long part(PartKind kind, String serial, String metres) {
    boolean cable = kind == PartKind.CABLE;
    ComponentFacts facts =
        ComponentFacts.NOTHING_KNOWN
            .withFamily(family)
            .withLength(NominalLength.read(metres, Unit.METRE, Evidence.READ_ON_PART))
            .withTip(cable ? null : new BigDecimal("8"))
            .withScaleFactor(cable ? null : ScaleFactor.millivoltsPerMil("200"));
    ComponentDetails details =
        ComponentDetails.of(kind, new PartIdentity("Nordling", "N " + kind.word(), serial, ""));
    return write(tx -> world.register.add(tx, new NewComponent(details, facts, BUILT))).number();
  }

  public <R> R write(Function<Tx, R> work) {
    return world.database.write(new Act(null, "E. Ngineer", "engineer", "test", "test"), work);
  }

  public void point(UnaryOperator<PointDetails.Builder> change) {
    Point now = world.database.read(sql -> world.plant.point(sql, point)).orElseThrow();
    write(
        tx -> {
          world.plant.changePoint(
              tx, point, now.version(), machine, change.apply(now.details().but()).build());
          return null;
        });
  }

  /** Gap to set at 1,250 µm. */
  void approvedGap() {
    point(details -> details.approvedGap(Reported.read("1250", Unit.MICROMETRE).orElseThrow()));
  }

  ChannelId channel() {
    return write(
        tx -> {
          ChannelId id = world.channels.add(tx, site, new Channel.Position("R", 1, ++channels));
          world.channels.link(tx, point, id, ChannelRole.MEASURES);
          return id;
        });
  }

  /**
   * Tells a channel from the day the loop was built; levels in µm.
   *
   * @param danger to the high side; with a zero voltage to both
   */
  void set(ChannelId channel, SettingBasis basis, String scale, String danger, String zeroVolts) {
    boolean axial = !zeroVolts.isEmpty();
    BigDecimal level = new BigDecimal(danger);
    BigDecimal full = BigDecimal.valueOf(250);
    ChannelSetting setting =
        new ChannelSetting(
            basis,
            BUILT,
            ScaleFactor.millivoltsPerMil(scale),
            "",
            new Limits(axial ? full.negate() : BigDecimal.ZERO, full),
            Limits.NONE,
            new Limits(axial ? level.negate() : null, level),
            Unit.MICROMETRE,
            ChannelSetting.Delays.NOT_SAID,
            new Limits(new BigDecimal("-17.5"), new BigDecimal("-2.1")),
            axial ? new BigDecimal(zeroVolts) : null,
            axial ? Direction.TOWARD : null,
            "");
    write(
        tx -> {
          world.channels.set(tx, channel, setting);
          return null;
        });
  }

  /** What a rule says of the loop as it is now. */
  public Finding finding(String rule) {
    return world
        .database
        .read(
            sql ->
                world.judging.judge(sql, List.of(new Judging.Subject(point.number(), "V-1")), NOW))
        .get(0)
        .judgement()
        .findings()
        .stream()
        .filter(finding -> finding.rule().name().equals(rule))
        .findFirst()
        .orElseThrow();
  }

  @Override
  public void close() {
    world.close();
  }
}
