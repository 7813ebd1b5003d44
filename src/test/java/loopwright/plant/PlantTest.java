package loopwright.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.DbProblem;
import loopwright.db.Tx;
import loopwright.problem.Refused;
import loopwright.testing.Engine;
import loopwright.testing.TestClock;
import loopwright.units.Reported;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.jooq.DSLContext;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

@Tag("zone")
@ParameterizedClass
@EnumSource(Engine.class)
class PlantTest {
  private final Engine engine;
  private final Plant plant = new Plant(PointWatch.NOBODY);
  private final Channels channels = new Channels(PointWatch.NOBODY);
  private Database database;
  private SiteId site;
  private TrainId train;
  private MachineId turbine;

  PlantTest(Engine engine) {
    this.engine = engine;
  }

  @BeforeEach
  void open() {
    database = engine.open(new TestClock("2026-03-01T10:15:30Z"));
    site = write(tx -> plant.addSite(tx, site("MARSH", "Europe/Berlin")));
    train = write(tx -> plant.addTrain(tx, site, "K-301", "Blower train"));
    turbine = write(tx -> plant.addMachine(tx, train, "T", "Turbine", 1));
  }

  @AfterEach
  void close() {
    if (database != null) {
      database.close();
    }
  }

  private static SiteDetails site(String code, String zone) {
    return new SiteDetails(code, "Marsh " + code, ZoneId.of(zone), true);
  }

  private <R> R write(Function<Tx, R> work) {
    return database.write(new Act(null, "E. Ngineer", "engineer", "plant", "new"), work);
  }

  private PointId point(MachineId machine, String tag) {
    return write(tx -> plant.addPoint(tx, machine, PointDetails.of(tag, PointKind.RADIAL).build()));
  }

  private <T> List<T> list(Function<DSLContext, List<T>> question) {
    return database.read(question);
  }

  private <K, T> Map<K, T> map(Function<DSLContext, Map<K, T>> question) {
    return database.read(question);
  }

  @Test
  void aPointComesBackAsItWasEntered() {
    PointDetails details =
        PointDetails.of("K301-VX1", PointKind.DIFFERENTIAL_EXPANSION)
            .place("drive-end bearing")
            .pairTag("K301-VY1")
            .facing(
                new Facing(
                    new BigDecimal("-45.00"),
                    "drive end",
                    Rotation.COUNTER_CLOCKWISE,
                    new BigDecimal("9.500")))
            .phaseMark(new PhaseMark(Mark.NOTCH, 1, new BigDecimal("-8.500")))
            .surroundings(
                new Surroundings("42CrMo4", "zone 2", "JB-3", new BigDecimal("95.0"), null, null))
            .approvedGap(Reported.read("50,0", Unit.MIL).orElseThrow())
            .intervalMonths(48)
            .build();
    PointId id = write(tx -> plant.addPoint(tx, turbine, details));
    Point point = database.read(sql -> plant.pointTagged(sql, " k301-vx1 ")).orElseThrow();
    assertThat(point.id()).isEqualTo(id);
    assertThat(point.details()).isEqualTo(details);
    assertThat(point.details().approvedGap()).hasToString("50,0 mil");
    assertThat(point.details().approvedGap().canonical()).isEqualTo(1270.0);
    PointPlace place = database.read(sql -> plant.place(sql, id)).orElseThrow();
    assertThat(place.site().zone()).isEqualTo(ZoneId.of("Europe/Berlin"));
    assertThat(place.train().code()).isEqualTo("K-301");
    assertThat(place.machine().name()).isEqualTo("Turbine");
  }

  @Test
  void aTrainIsWalkedAlongTheShaft() {
    MachineId gearbox = write(tx -> plant.addMachine(tx, train, "A", "Gearbox", 2));
    point(gearbox, "K301-VX3");
    point(turbine, "K301-VX2");
    point(turbine, "K301-VX1");
    assertThat(list(sql -> plant.walk(sql, train)))
        .extracting(walk -> walk.machine().code() + walk.points().stream().map(Point::tag).toList())
        .containsExactly("T[K301-VX1, K301-VX2]", "A[K301-VX3]");
    assertThat(list(sql -> plant.trains(sql, site)))
        .singleElement()
        .satisfies(
            row -> {
              assertThat(row.machines()).isEqualTo(2);
              assertThat(row.points()).isEqualTo(3);
            });
  }

  @Test
  void aTagIsNeverGivenTwice() {
    PointId id = point(turbine, "K301-VX1");
    PointDetails retired =
        database
            .read(sql -> plant.point(sql, id))
            .orElseThrow()
            .details()
            .but()
            .state(PointState.RETIRED)
            .build();
    write(
        tx -> {
          plant.changePoint(tx, id, 1, turbine, retired);
          return true;
        });
    assertThatThrownBy(() -> point(turbine, "k301-vx1"))
        .hasMessageContaining("The tag K301-VX1 stands at K-301 / Turbine already");
    assertThat(list(sql -> plant.trains(sql, site)).get(0).points()).isZero();
  }

  @Test
  void whoSawAnOlderStateIsRefused() {
    PointId id = point(turbine, "K301-VX1");
    PointDetails details = PointDetails.of("K301-VX1", PointKind.AXIAL).build();
    write(
        tx -> {
          plant.changePoint(tx, id, 1, turbine, details);
          return true;
        });
    assertThatThrownBy(
            () ->
                write(
                    tx -> {
                      plant.changePoint(tx, id, 1, turbine, details);
                      return true;
                    }))
        .isInstanceOfSatisfying(
            Refused.class, r -> assertThat(r.problem()).isEqualTo(DbProblem.STALE));
  }

  @Test
  void codesAreTakenOnceInAnyCase() {
    assertThatThrownBy(() -> write(tx -> plant.addSite(tx, site("marsh", "UTC"))))
        .hasMessageContaining("Site marsh exists already");
    assertThatThrownBy(() -> write(tx -> plant.addTrain(tx, site, "k-301", "x")))
        .hasMessageContaining("Train k-301 exists already");
    assertThatThrownBy(() -> write(tx -> plant.addMachine(tx, train, "t", "x", 1)))
        .hasMessageContaining("Machine t exists already");
    assertThat(list(plant::sites)).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "Berlin", "+02:00", "CEST", "Europe/Atlantis"})
  void onlyNamedZonesAreClocks(String zone) {
    assertThatThrownBy(() -> Zones.read(zone))
        .isInstanceOf(Refused.class)
        .hasMessageContaining("Europe/Berlin");
  }

  @Test
  void anOffsetIsNoZone() {
    assertThatThrownBy(() -> new SiteDetails("A", "A", ZoneOffset.ofHours(2), true))
        .isInstanceOf(Refused.class);
    assertThat(Zones.read("europe/berlin")).isEqualTo(ZoneId.of("Europe/Berlin"));
  }

  @Test
  void tagsAndPlacesAreFoundByAPart() {
    point(turbine, "X-K301");
    point(turbine, "K301-VX1");
    write(
        tx ->
            plant.addPoint(
                tx, turbine, PointDetails.of("Z1", PointKind.AXIAL).place("beside k301").build()));
    assertThat(list(sql -> plant.pointsHolding(sql, "k301", 10)))
        .extracting(Point::tag)
        .containsExactly("K301-VX1", "X-K301", "Z1");
    assertThat(list(sql -> plant.pointsHolding(sql, "%", 10))).isEmpty();
  }

  @Test
  void pointsAreReadInChunks() {
    PointId first = point(turbine, "A");
    PointId second = point(turbine, "B");
    assertThat(list(sql -> plant.pointsAfter(sql, new PointId(0), 1)))
        .extracting(Point::id)
        .containsExactly(first);
    assertThat(list(sql -> plant.pointsAfter(sql, first, 10)))
        .extracting(Point::id)
        .containsExactly(second);
    assertThat(map(sql -> plant.pointsTagged(sql, List.of("a", "c")))).containsOnlyKeys("A");
  }

  @Test
  void aChannelKeepsEverySettingAndShowsTheNewest() {
    PointId point = point(turbine, "K301-ZT1");
    ChannelId channel = write(tx -> channels.add(tx, site, new Channel.Position("R1", 3, 2)));
    ChannelSetting first =
        ChannelSetting.of(
            SettingBasis.APPROVED,
            Instant.parse("2025-01-01T00:00:00Z"),
            ScaleFactor.millivoltsPerMil("200"));
    ChannelSetting second =
        new ChannelSetting(
            SettingBasis.APPROVED,
            Instant.parse("2026-01-01T00:00:00Z"),
            ScaleFactor.millivoltsPerMicrometre("7.874"),
            "measured",
            new Limits(new BigDecimal("-1000"), new BigDecimal("1000")),
            new Limits(new BigDecimal("-500.5"), new BigDecimal("500.5")),
            Limits.NONE,
            Unit.MICROMETRE,
            new ChannelSetting.Delays(new BigDecimal("3"), null),
            new Limits(new BigDecimal("-19.25"), new BigDecimal("-1.3")),
            new BigDecimal("-10"),
            Direction.TOWARD,
            "MOC-17");
    ChannelSetting found =
        ChannelSetting.of(SettingBasis.FOUND, Instant.parse("2025-06-01T00:00:00Z"), null);
    write(
        tx -> {
          channels.set(tx, channel, second);
          channels.set(tx, channel, first);
          channels.set(tx, channel, found);
          channels.link(tx, point, channel, ChannelRole.MEASURES);
          return channels.addGroup(tx, site, "axial", "1oo1", List.of(channel));
        });
    PointChannel seen = database.read(sql -> channels.ofPoint(sql, point)).get(0);
    assertThat(seen.approved().from()).isEqualTo(second.from());
    assertThat(seen.approved().authority()).isEqualTo("MOC-17");
    assertThat(seen.approved().okVolts().low()).isEqualByComparingTo("-19.25");
    assertThat(seen.approved().positive()).isEqualTo(Direction.TOWARD);
    assertThat(seen.found().scaleFactor()).isNull();
    assertThat(list(sql -> channels.settings(sql, channel, SettingBasis.APPROVED))).hasSize(2);
    assertThat(list(sql -> channels.groupsOf(sql, channel)))
        .singleElement()
        .satisfies(group -> assertThat(group.members()).hasSize(1));
    assertThatThrownBy(() -> write(tx -> channels.add(tx, site, new Channel.Position("R1", 3, 2))))
        .hasMessageContaining("Rack R1, slot 3, channel 2 exists already");
    assertThatThrownBy(
            () ->
                write(
                    tx -> {
                      channels.link(tx, point, channel, ChannelRole.MEASURES);
                      return true;
                    }))
        .hasMessageContaining("tied to that channel already");
  }

  @Test
  void whatCantBeIsRefused() {
    assertThatThrownBy(() -> PointDetails.of(" ", PointKind.AXIAL).build())
        .hasMessage("Give the tag.");
    assertThatThrownBy(() -> PointDetails.of("x".repeat(61), PointKind.AXIAL).build())
        .hasMessageContaining("61 characters; at most 60");
    assertThatThrownBy(
            () ->
                PointDetails.of("A", PointKind.AXIAL)
                    .approvedGap(Reported.read("0", Unit.MIL).orElseThrow())
                    .build())
        .hasMessageContaining("The approved gap can't be 0 mil");
    assertThatThrownBy(
            () ->
                PointDetails.of("A", PointKind.AXIAL)
                    .approvedGap(Reported.read("2", Unit.METRE).orElseThrow())
                    .build())
        .hasMessageContaining("not a unit of a gap");
    assertThatThrownBy(() -> new Facing(new BigDecimal("45.005"), "", null, null))
        .hasMessageContaining("2 after it");
    assertThatThrownBy(() -> new Limits(BigDecimal.ONE, BigDecimal.ONE))
        .hasMessageContaining("is not below");
  }

  @Test
  void whoeverFeedsAChannelIsToldOfWhenItIsSet() {
    List<PointId> told = new java.util.ArrayList<>();
    Channels watched = new Channels((tx, point) -> told.add(point));
    PointId one = point(turbine, "V-1");
    PointId other = point(turbine, "P-1");
    ChannelId channel = write(tx -> watched.add(tx, site, new Channel.Position("R", 1, 1)));
    write(
        tx -> {
          watched.link(tx, one, channel, ChannelRole.MEASURES);
          watched.link(tx, other, channel, ChannelRole.PHASE_REFERENCE_FOR);
          return true;
        });
    assertThat(told).containsExactly(one, other);
    told.clear();
    write(
        tx -> {
          watched.set(
              tx,
              channel,
              ChannelSetting.of(
                  SettingBasis.FOUND, java.time.Instant.parse("2026-01-01T00:00:00Z"), null));
          return true;
        });
    assertThat(told).containsExactlyInAnyOrder(one, other);
  }
}
