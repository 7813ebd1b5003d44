package loopwright.importing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import loopwright.calibration.Calibrated;
import loopwright.curve.ToleranceProfile;
import loopwright.db.Act;
import loopwright.demo.DemoEquipment;
import loopwright.journal.Verdict;
import loopwright.journal.Verification;
import loopwright.loop.Content;
import loopwright.loop.LoopEvent;
import loopwright.loop.Placed;
import loopwright.loop.Slot;
import loopwright.matching.PartState;
import loopwright.matching.Range;
import loopwright.plant.ChannelRole;
import loopwright.plant.ChannelSetting;
import loopwright.plant.Point;
import loopwright.plant.PointChannel;
import loopwright.plant.SettingBasis;
import loopwright.plant.SiteDetails;
import loopwright.plant.VotingGroup;
import loopwright.problem.Problem;
import loopwright.problem.Refused;
import loopwright.register.Component;
import loopwright.register.Family;
import loopwright.register.FamilyDetails;
import loopwright.register.ToleranceProfiles;
import loopwright.testing.Engine;
import loopwright.testing.TestClock;
import loopwright.units.Length;
import loopwright.units.ScaleFactor;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

@ParameterizedClass
@EnumSource(Engine.class)
class ImportingTest {
  private static final String FAMILIES =
      """
      family,name,maker,scale_factor_mv_mil,probe_lengths_m,cable_lengths_m,system_lengths_m,cable_use,profile
      TEST-5,Test family,Testmaker,200,0.5 1.0,4.0 4.5,5.0,required,api670-2mm
      """;
  private static final String COMPONENTS =
      """
      kind,maker,model,serial,family,length_m,store,since
      probe,Testmaker,P10,00417,TEST-5,1.0,,2020-01-01
      probe,Testmaker,P10,00418,TEST-5,1.0,Main,2020-01-01
      extension cable,Testmaker,C40,XC-1,TEST-5,4.0,,2020-01-01
      extension cable,Testmaker,C45,XC-2,TEST-5,4.5,,2020-01-01
      driver,Testmaker,D50,DR-1,TEST-5,5.0,,2020-01-01
      driver,Testmaker,D50,DR-2,TEST-5,5.0,,2020-01-01
      """;
  private static final String POINTS =
      """
      site,site_name,site_zone,train,machine,tag,kind,family,rack,rack_slot,rack_channel,scale_factor_mv_mil,alert_high,level_unit,phase_reference,voting_group,voting_logic
      TM,Test Marsh,Europe/Berlin,T-1,BLOWER,T1-VX,radial vibration,TEST-5,R1,3,1,200,90,µm,T1-P,,
      TM,,,T-1,BLOWER,T1-VY,radial vibration,TEST-5,R1,3,2,200,90,µm,T1-P,V1,1oo2
      TM,,,T-1,BLOWER,T1-P,phase reference,TEST-5,R1,2,1,,,,,,
      """;
  private static final String PLACEMENTS =
      """
      tag,slot,maker,model,serial,from,until
      T1-VX,probe,Testmaker,P10,00417,2021-05-03,
      T1-VX,path-1,Testmaker,C40,XC-1,2021-05-03,
      T1-VX,driver,Testmaker,D50,DR-1,2021-05-03,
      T1-VY,probe,Testmaker,P10,00418,2021-05-03,
      T1-VY,path-1,Testmaker,C45,XC-2,2021-05-03,
      T1-VY,driver,Testmaker,D50,DR-2,2021-05-03,
      """;
  private static final String CALIBRATIONS =
      """
      tag,stage,measured_at,performed_by,gap_um,volts
      T1-VX,as left,2022-03-01T10:00,Technician 1,250,-2.0
      T1-VX,as left,2022-03-01T10:00,Technician 1,1250,-9.9
      T1-VX,as left,2022-03-01T10:00,Technician 1,2250,-17.7
      """;
  private static final String[] ALL = {
    "families.csv", FAMILIES,
    "components.csv", COMPONENTS,
    "points.csv", POINTS,
    "placements.csv", PLACEMENTS,
    "calibrations.csv", CALIBRATIONS
  };

  private final Engine engine;
  private final TestClock clock = new TestClock("2026-11-25T09:00:00Z");
  private ImportWorld world;

  ImportingTest(Engine engine) {
    this.engine = engine;
  }

  @BeforeEach
  void open() {
    world = new ImportWorld(engine, clock);
  }

  @AfterEach
  void close() {
    if (world != null) {
      world.close();
    }
  }

  private Component part(String serial) {
    return world.database.read(sql -> world.register.labelled(sql, serial)).get(0);
  }

  private Optional<Point> point(String tag) {
    return world.database.read(sql -> world.plant.pointTagged(sql, tag));
  }

  private List<Placed> placed(String tag) {
    long number = point(tag).orElseThrow().id().number();
    return world.database.read(sql -> world.configuration.ofPoint(sql, number));
  }

  private List<LoopEvent> events(String tag) {
    long number = point(tag).orElseThrow().id().number();
    return world.database.read(sql -> world.configuration.events(sql, number));
  }

  private void agrees() {
    Verdict verdict = Verification.of(world.database);
    assertThat(verdict.agrees()).as(String.valueOf(verdict.disagreement())).isTrue();
  }

  private int families() {
    List<Family> all = world.database.read(sql -> world.families.all(sql));
    return all.size();
  }

  private static Problem problem(Throwable thrown) {
    return ((Refused) thrown).problem();
  }

  @Tag("zone")
  @Test
  void whatAFamiliesFileHasNoColumnForStays() {
    FamilyDetails.Builder set =
        FamilyDetails.of("SET-1", "set", "Nordling", ScaleFactor.millivoltsPerMil("200"))
            .selectableSystemLength(true)
            .outputVolts(Range.of("-23", "-0.5"));
    world.database.write(Act.ofProgram("test", "test"), tx -> world.families.add(tx, set.build()));
    world.take("families.csv", "family,name,maker,scale_factor_mv_mil\nSET-1,renamed,,200\n");
    FamilyDetails now =
        world.database.read(sql -> world.families.named(sql, "SET-1")).orElseThrow().details();
    assertThat(now.name()).isEqualTo("renamed");
    assertThat(now.selectableSystemLength()).isTrue();
    assertThat(now.outputVolts()).isEqualTo(Range.of("-23", "-0.5"));
  }

  @Test
  void aPlanWritesNothingAndItsRunWritesAllAsOneChange() {
    long before = world.head();
    ImportPlan plan = world.plan(ALL);
    assertThat(plan.problems()).isEmpty();
    assertThat(plan.counts()).isEqualTo(new RowCounts(19, 0, 0, 0));
    assertThat(world.head()).isEqualTo(before);
    assertThat(point("T1-VX")).isEmpty();
    ImportReceipt receipt = world.run(plan);
    assertThat(receipt.counts()).isEqualTo(plan.counts());
    assertThat(world.head()).isEqualTo(before + 1);
    assertThat(point("t1-vx")).isPresent();
    assertThat(part("00417").state()).isEqualTo(PartState.FITTED);
    agrees();
  }

  @Tag("zone")
  @Test
  void theSameFilesAgainChangeNothing() {
    world.take(ALL);
    long head = world.head();
    clock.forward(Duration.ofDays(3));
    ImportPlan again = world.plan(ALL);
    assertThat(again.problems()).isEmpty();
    assertThat(again.counts()).isEqualTo(new RowCounts(0, 0, 19, 0));
    assertThat(again.isToWrite()).isFalse();
    assertThat(world.run(again).change()).isZero();
    assertThat(world.head()).isEqualTo(head);
  }

  @Test
  void filesInAnyOrderArePlannedTogether() {
    ImportPlan plan =
        world.plan(
            "calibrations.csv", CALIBRATIONS,
            "placements.csv", PLACEMENTS,
            "points.csv", POINTS,
            "components.csv", COMPONENTS,
            "families.csv", FAMILIES);
    assertThat(plan.problems()).isEmpty();
    assertThat(plan.rows().get(0).file()).isEqualTo("calibrations.csv");
    world.run(plan);
  }

  @Test
  void twoFilesOfOneNameAreToldApart() {
    ImportPlan plan =
        world.plan(
            "a.csv", FAMILIES, "a.csv", "kind,maker,model,serial\nprobe,T,P,1\nprobe,T,P,\n");
    assertThat(plan.files())
        .extracting(ImportPlan.PlannedFile::name)
        .containsExactly("a.csv", "a.csv (2)");
    assertThat(plan.problems())
        .singleElement()
        .satisfies(p -> assertThat(p.file()).isEqualTo("a.csv (2)"));
  }

  @Test
  void aRowThatDiffersShowsFieldByFieldWhatItChanges() {
    world.take(ALL);
    ImportPlan plan =
        world.plan(
            "components.csv",
            """
            kind,maker,model,serial,family,length_m,length_evidence,store,bin
            probe,Testmaker,P10,00418,TEST-5,0.50,certificate,,A-1
            """);
    assertThat(plan.rows())
        .singleElement()
        .satisfies(
            row -> {
              assertThat(row.fate()).isEqualTo(Fate.CHANGED);
              assertThat(row.changes())
                  .containsExactly(
                      new FieldChange("length", "1 m", "0.5 m"),
                      new FieldChange("length evidence", "read on part", "certificate"),
                      new FieldChange("bin", "", "A-1"));
            });
    world.run(plan);
    Component part = part("00418");
    assertThat(part.facts().length().length()).isEqualTo(Length.ofMetres("0.5"));
    assertThat(part.facts().length().typed().typed()).isEqualTo("0.50");
    assertThat(part.facts().shelf().store()).as("an empty cell leaves it").isEqualTo("Main");
    assertThat(world.database.<Integer>read(sql -> world.register.beliefs(sql, part.id()).size()))
        .isEqualTo(2);
    agrees();
  }

  @Test
  void theSameLengthInFeetIsNoChange() {
    world.take("c.csv", "kind,maker,model,serial,length_ft\nextension cable,Anymaker,C15,1,15\n");
    ImportPlan plan =
        world.plan(
            "c.csv", "kind,maker,model,serial,length_m\nextension cable,Anymaker,C15,1,4.572\n");
    assertThat(plan.counts()).isEqualTo(new RowCounts(0, 0, 1, 0));
  }

  @Test
  void aPlanIsRefusedWhenTheRegisterHasMovedOn() {
    ImportPlan plan = world.plan(ALL);
    world.take("other.csv", "kind,maker,model,serial\nprobe,Anymaker,P,1\n");
    long head = world.head();
    assertThatThrownBy(() -> world.run(plan))
        .satisfies(t -> assertThat(problem(t)).isEqualTo(ImportProblem.MOVED_ON));
    assertThat(world.head()).isEqualTo(head);
    ImportPlan again = world.importing.planAgain(plan.id());
    assertThat(again.id()).isNotEqualTo(plan.id());
    assertThat(world.run(again).counts().added()).isEqualTo(19);
  }

  @Test
  void aPlanIsRunOnceHoweverOftenItIsAsked() throws Exception {
    ImportPlan plan = world.plan(ALL);
    long head = world.head();
    ExecutorService clicks = Executors.newFixedThreadPool(4);
    try {
      Callable<ImportReceipt> click = () -> world.run(plan);
      List<Future<ImportReceipt>> receipts = clicks.invokeAll(List.of(click, click, click, click));
      for (Future<ImportReceipt> receipt : receipts) {
        assertThat(receipt.get()).isEqualTo(receipts.get(0).get());
      }
    } finally {
      clicks.shutdown();
    }
    assertThat(world.head()).isEqualTo(head + 1);
  }

  @Test
  void aPlanWithRefusedRowsIsNotRun() {
    ImportPlan plan = world.plan("f.csv", FAMILIES, "c.csv", COMPONENTS.replace("4.5", "400"));
    assertThat(plan.counts().refused()).isEqualTo(1);
    long head = world.head();
    assertThatThrownBy(() -> world.run(plan))
        .satisfies(t -> assertThat(problem(t)).isEqualTo(ImportProblem.HAS_PROBLEMS));
    assertThat(world.head()).isEqualTo(head);
    assertThat(families()).isZero();
  }

  @ParameterizedTest
  @CsvSource({
    "DR-1, 1, ''",
    "DR-1, 2, driver DR-1 has one channel. Leave the cell empty.",
    "DR-1, 0, driver DR-1 has one channel. Leave the cell empty.",
    "BOX, 2, ''",
    "BOX, 3, driver BOX has 2 channels. Say which one.",
    "BOX, '', an empty cell is not possible. driver BOX has 2 channels. Say which one.",
    "BOX, one, driver_channel"
  })
  void theChannelOfADriverIsOneThatItHas(String serial, String channel, String said) {
    String box = "kind,maker,model,serial,channels\ndriver,Testmaker,D50,BOX,2\n";
    String sits =
        "tag,slot,maker,model,serial,from,driver_channel\nT1-VX,driver,Testmaker,D50,%s,2021-05-03,%s\n"
            .formatted(serial, channel);
    ImportPlan plan =
        world.plan(
            "f.csv", FAMILIES, "c.csv", COMPONENTS, "b.csv", box, "p.csv", POINTS, "s.csv", sits);
    assertThat(plan.problems().stream().map(problem -> problem.message()).toList())
        .hasSize(said.isEmpty() ? 0 : 1)
        .allSatisfy(message -> assertThat(message).contains(said));
  }

  @Test
  void aRunThatFailsOnTheWayLeavesNothingBehind() {
    ImportPlan plan = world.plan("f.csv", FAMILIES, "c.csv", COMPONENTS);
    long head = world.head();
    assertThatThrownBy(
            () ->
                world.importing.run(
                    plan.id(),
                    reason -> new Act(null, "A. Tester", "planner", "x".repeat(300), reason),
                    "test"))
        .isInstanceOf(RuntimeException.class);
    assertThat(world.head()).isEqualTo(head);
    assertThat(families()).isZero();
    assertThat(world.run(plan).counts().added()).as("and can be run then").isEqualTo(7);
  }

  @Test
  void aPlanIsForgottenAfterAWhile() {
    ImportPlan plan = world.plan(ALL);
    clock.forward(Duration.ofMinutes(61));
    assertThatThrownBy(() -> world.run(plan))
        .satisfies(t -> assertThat(problem(t)).isEqualTo(ImportProblem.NO_PLAN));
  }

  @Tag("zone")
  @Test
  void bareDaysBeginOnTheClockOfTheSite() {
    world.take(ALL);
    assertThat(placed("T1-VX"))
        .allMatch(p -> p.span().from().equals(Instant.parse("2021-05-02T22:00:00Z")));
  }

  @Test
  void pointsComeWithPlaceChannelsAndVotes() {
    world.take(ALL);
    SiteDetails site = world.database.read(sql -> world.plant.sites(sql)).get(0).details();
    assertThat(site.name()).isEqualTo("Test Marsh");
    assertThat(site.adopting()).isTrue();
    Point phase = point("T1-P").orElseThrow();
    List<PointChannel> fed = world.database.read(sql -> world.channels.ofPoint(sql, phase.id()));
    assertThat(fed.stream().map(PointChannel::role).collect(Collectors.toList()))
        .containsExactlyInAnyOrder(
            ChannelRole.MEASURES, ChannelRole.PHASE_REFERENCE_FOR, ChannelRole.PHASE_REFERENCE_FOR);
    Point radial = point("T1-VY").orElseThrow();
    PointChannel channel =
        world.database.read(sql -> world.channels.ofPoint(sql, radial.id())).get(0);
    assertThat(channel.approved().alert().high()).isEqualByComparingTo("90");
    List<VotingGroup> groups =
        world.database.read(sql -> world.channels.groupsOf(sql, channel.channel().id()));
    assertThat(groups)
        .singleElement()
        .satisfies(group -> assertThat(group.logic()).isEqualTo("1oo2"));
  }

  @Test
  void aChangedSettingIsANewSettingAndTheOldOneStays() {
    world.take(ALL);
    ImportPlan plan =
        world.plan("points.csv", POINTS.replace("200,90,µm,T1-P,,", "200,95,µm,T1-P,,"));
    assertThat(plan.rows().get(0).changes())
        .containsExactly(new FieldChange("alert high", "90 µm", "95 µm"));
    assertThat(plan.counts()).isEqualTo(new RowCounts(0, 1, 2, 0));
    world.run(plan);
    Point radial = point("T1-VX").orElseThrow();
    PointChannel channel =
        world.database.read(sql -> world.channels.ofPoint(sql, radial.id())).get(0);
    assertThat(channel.approved().alert().high()).isEqualByComparingTo("95");
    List<ChannelSetting> settings =
        world.database.read(
            sql -> world.channels.settings(sql, channel.channel().id(), SettingBasis.APPROVED));
    assertThat(settings).hasSize(2);
  }

  @Test
  void aPlacementEndsWhatWasOpenInItsSlot() {
    world.take(ALL);
    ImportPlan plan =
        world.plan(
            "c.csv",
                "kind,maker,model,serial,family,length_m\nprobe,Testmaker,P10,00419,TEST-5,1.0\n",
            "p.csv", "tag,slot,serial,from,note\nT1-VX,probe,00419,2023-01-01,tip scratched\n");
    assertThat(plan.problems()).isEmpty();
    assertThat(plan.rows().get(1).note()).contains("probe 00417 at T1-VX probe ends then");
    world.run(plan);
    List<Placed> probes = placed("T1-VX").stream().filter(p -> p.slot() == Slot.PROBE).toList();
    assertThat(probes).hasSize(2);
    assertThat(probes.get(0).span().until()).isEqualTo(probes.get(1).span().from());
    assertThat(part("00417").state()).isEqualTo(PartState.IN_STOCK);
    assertThat(events("T1-VX").get(0).note()).isEqualTo("tip scratched");
    agrees();
  }

  @Test
  void aPartFoundElsewhereLeavesItsOldSlotUnknown() {
    world.take(ALL);
    world.take("p.csv", "tag,slot,serial,from\nT1-VY,probe,00417,2023-01-01\n");
    Placed left =
        placed("T1-VX").stream()
            .filter(p -> p.slot() == Slot.PROBE && p.span().isOpen())
            .findFirst()
            .orElseThrow();
    assertThat(left.content()).isInstanceOf(Content.Unknown.class);
    assertThat(left.source()).isEqualTo("displaced");
    assertThat(events("T1-VX").get(0).kind()).isEqualTo("displaced");
    agrees();
  }

  @Test
  void aSwapToldInOneFileLeavesNothingUnknown() {
    world.take(ALL);
    world.take(
        "p.csv",
        """
        tag,slot,serial,from
        T1-VX,path-1,XC-2,2023-01-01T12:00
        T1-VY,path-1,XC-1,2023-01-01T12:00
        """);
    assertThat(placed("T1-VX")).noneMatch(p -> p.content() instanceof Content.Unknown);
    assertThat(placed("T1-VY")).noneMatch(p -> p.content() instanceof Content.Unknown);
    agrees();
  }

  @Tag("zone")
  @Test
  void aFileMayTellTheEndOfAStay() {
    world.take(ALL);
    ImportPlan plan =
        world.plan(
            "p.csv", "tag,slot,serial,from,until\nT1-VX,probe,00417,2021-05-03,2024-05-03\n");
    assertThat(plan.rows().get(0).changes())
        .containsExactly(new FieldChange("until", "", "2024-05-03 00:00"));
    world.run(plan);
    assertThat(placed("T1-VX").stream().filter(p -> p.slot() == Slot.PROBE).toList())
        .singleElement()
        .satisfies(p -> assertThat(p.span().isOpen()).isFalse());
    ImportPlan older = world.plan("placements.csv", PLACEMENTS);
    assertThat(older.counts())
        .as("what an older file says still holds")
        .isEqualTo(new RowCounts(0, 0, 6, 0));
    agrees();
  }

  @Test
  void earlierHistoryIsAddedBeforeWhatIsKnown() {
    world.take(ALL);
    world.take(
        "c.csv", "kind,maker,model,serial,family,length_m\nprobe,Testmaker,P10,00400,TEST-5,1.0\n",
        "p.csv", "tag,slot,serial,from\nT1-VX,probe,00400,2020-01-01\n");
    List<Placed> probes = placed("T1-VX").stream().filter(p -> p.slot() == Slot.PROBE).toList();
    assertThat(probes).hasSize(2);
    assertThat(probes.get(0).span().until()).isEqualTo(probes.get(1).span().from());
    assertThat(probes.get(1).span().isOpen()).isTrue();
    agrees();
  }

  @Test
  void twoRowsThatOverlapAreBothNamed() {
    world.take(ALL);
    ImportPlan plan =
        world.plan(
            "p.csv",
            """
            tag,slot,serial,from,until
            T1-P,probe,00417,2022-01-01,2022-06-01
            T1-P,probe,00418,2022-03-01,2022-04-01
            """);
    assertThat(plan.problems())
        .anySatisfy(
            p -> {
              assertThat(p.row()).isEqualTo(3);
              assertThat(p.message()).contains("row 2 of p.csv");
            });
  }

  @Test
  void aCalibrationIsNeverChangedByAFile() {
    world.take(ALL);
    ImportPlan plan = world.plan("k.csv", CALIBRATIONS.replace("-9.9", "-9.8"));
    assertThat(plan.problems())
        .singleElement()
        .satisfies(p -> assertThat(p.code()).isEqualTo("I-127"));
    assertThat(plan.counts()).isEqualTo(new RowCounts(0, 0, 0, 3));
  }

  /** The profile's second version, entered today, is one that no real curve meets. */
  private void secondVersion() {
    ToleranceProfile first =
        world
            .database
            .read(sql -> world.profiles.newest(sql, "api670-2mm"))
            .orElseThrow()
            .profile();
    ToleranceProfile second =
        new ToleranceProfile(
            first.code(),
            first.name(),
            1,
            first.source(),
            first.edition(),
            first.nominal(),
            new BigDecimal("0.01"),
            first.dslLimit(),
            first.shiftRule(),
            first.grids());
    world.database.write(
        new Act(null, "A. Tester", "engineer", "profile", "tighter"),
        tx -> world.profiles.add(tx, second));
  }

  private static String judged(ImportPlan plan) {
    return plan.rows().stream().map(RowFate::note).filter(n -> !n.isEmpty()).findFirst().orElse("");
  }

  @Test
  void anOldCurveIsJudgedByTheProfileOfThenAndComesUnsigned() {
    world.take(
        "families.csv",
        FAMILIES,
        "components.csv",
        COMPONENTS,
        "points.csv",
        POINTS,
        "placements.csv",
        PLACEMENTS);
    secondVersion();
    assertThat(judged(world.plan("k.csv", CALIBRATIONS)))
        .startsWith("Imported, unsigned; judged by api670-2mm, version 1.");
    String named = CALIBRATIONS.replace("performed_by,", "performed_by,profile_version,");
    assertThat(judged(world.plan("k.csv", named.replace("Technician 1,", "Technician 1,2,"))))
        .contains("judged by api670-2mm, version 2.");
    assertThat(world.plan("k.csv", named.replace("Technician 1,", "Technician 1,9,")).problems())
        .first()
        .satisfies(
            p -> {
              assertThat(p.code()).isEqualTo("I-131");
              assertThat(p.message()).contains("has no version 9", "1, 2");
            });
    clock.forward(Duration.ofDays(2));
    String later = CALIBRATIONS.replace("2022-03-01T10:00", "2026-11-26T10:00");
    assertThat(judged(world.plan("k.csv", later))).contains("version 2.");
    world.take("k.csv", CALIBRATIONS);
    Calibrated kept = calibrations("T1-VX").get(0);
    assertThat(kept.origin()).isEqualTo("imported");
    Optional<ToleranceProfiles.Stored> by =
        world.database.read(
            sql -> world.profiles.version(sql, Objects.requireNonNull(kept.profileVersion())));
    assertThat(by.orElseThrow().profile().version()).isEqualTo(1);
    agrees();
  }

  @Test
  void anOldCurveNamesTheEquipmentItWasTakenWith() {
    DemoEquipment.register(world.database, world.standards, clock);
    world.take(
        "families.csv",
        FAMILIES,
        "components.csv",
        COMPONENTS,
        "points.csv",
        POINTS,
        "placements.csv",
        PLACEMENTS);
    assertThat(complaints(named(CALIBRATIONS, "DVM-1")))
        .as("older than its first certificate")
        .first()
        .asString()
        .startsWith("I-132 k.csv, row 2, column standards: ");
    String lately = CALIBRATIONS.replace("2022-03-01T10:00", "2026-11-20T10:00");
    assertThat(complaints(named(lately, "\"DVM-1, DVM-9\"")))
        .first()
        .asString()
        .contains("DVM-9", "leave the cell empty");
    assertThat(complaints(named(lately, "DVM-1").replaceFirst("DVM-1", "MIC-1")))
        .as("rows of one curve disagree")
        .isNotEmpty();
    world.take("k.csv", named(lately, "\"dvm-1; MIC-1\""));
    Calibrated kept = calibrations("T1-VX").get(0);
    List<String> with =
        world.database.read(
            sql ->
                world.standards.used(sql, world.calibrations.certificates(sql, kept)).stream()
                    .map(used -> used.standard().code())
                    .sorted()
                    .toList());
    assertThat(with).containsExactly("DVM-1", "MIC-1");
    agrees();
  }

  private static String named(String file, String standards) {
    return file.replace("performed_by,", "performed_by,standards,")
        .replace("Technician 1,", "Technician 1," + standards + ",");
  }

  private List<String> complaints(String file) {
    return world.plan("k.csv", file).problems().stream()
        .map(problem -> problem.code() + " " + problem.message())
        .toList();
  }

  private List<Calibrated> calibrations(String tag) {
    long number = point(tag).orElseThrow().id().number();
    return world.database.read(sql -> world.calibrations.ofLoop(sql, number, Optional.empty(), 10));
  }

  @Test
  void whatNeedsARefusedRowIsRefusedWithIt() {
    ImportPlan plan =
        world.plan(
            "families.csv", FAMILIES,
            "components.csv", COMPONENTS.replace("00417,TEST-5,1.0", "00417,TEST-5,one"),
            "points.csv", POINTS,
            "placements.csv", PLACEMENTS);
    assertThat(plan.problems())
        .extracting(p -> p.file() + " " + p.row() + " " + p.code())
        .containsExactly("components.csv 2 I-103", "placements.csv 2 I-129");
  }

  @Test
  void noFilesAreNoImport() {
    assertThatThrownBy(() -> world.importing.plan(List.of(), Optional.empty()))
        .satisfies(t -> assertThat(problem(t)).isEqualTo(ImportProblem.NO_FILES));
  }

  @Test
  void aChosenDecimalMarkDecides() {
    String open = "kind,maker,model,serial,length_m\nprobe,Anymaker,P,1,\"1,250\"\n";
    ImportPlan comma =
        world.importing.plan(ImportWorld.files("c.csv", open), Optional.of(DecimalMark.COMMA));
    assertThat(comma.isToWrite()).isTrue();
    ImportPlan point =
        world.importing.plan(ImportWorld.files("c.csv", open), Optional.of(DecimalMark.POINT));
    assertThat(point.problems())
        .singleElement()
        .satisfies(p -> assertThat(p.code()).isEqualTo("I-106"));
  }
}
