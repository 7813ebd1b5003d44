package loopwright.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import loopwright.calibration.Calibrated;
import loopwright.calibration.Stage;
import loopwright.importing.ImportReceipt;
import loopwright.importing.ImportWorld;
import loopwright.loop.Judging;
import loopwright.matching.Finding;
import loopwright.matching.Judgement;
import loopwright.matching.Verdict;
import loopwright.plant.Point;
import loopwright.plant.PointId;
import loopwright.testing.Engine;
import loopwright.testing.TestClock;
import loopwright.units.Length;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The invented plant, loaded through the import: each fault in it is judged as it is meant. */
@Tag("zone")
class DemoScenarioTest {
  private static final TestClock CLOCK = new TestClock("2027-03-04T05:06:07Z");

  private static ImportWorld world;
  private static ImportReceipt receipt;
  private static Map<String, Judgement> judged;

  @BeforeAll
  static void load() {
    world = new ImportWorld(Engine.H2, CLOCK);
    receipt = DemoPlant.load(world.database, world.importing, world.plant, CLOCK);
    DemoSheets.enter(world.database, world.plant, world.families, world.sheets, world.alloys);
    judged =
        world.database.read(
            sql -> {
              List<Judging.Subject> subjects =
                  world.plant.pointsAfter(sql, new PointId(0), 1_000).stream()
                      .map(point -> new Judging.Subject(point.id().number(), point.tag()))
                      .toList();
              return world.judging.judge(sql, subjects, CLOCK.instant()).stream()
                  .collect(
                      Collectors.toMap(
                          j -> j.subject().tag(),
                          Judging.Judged::judgement,
                          (a, b) -> a,
                          TreeMap::new));
            });
  }

  @AfterAll
  static void close() {
    world.close();
  }

  private static Judgement of(String tag) {
    return Optional.ofNullable(judged.get(tag)).orElseThrow();
  }

  private static Length balance(String tag) {
    return of(tag).balance();
  }

  private static List<Calibrated> calibrations(String tag) {
    return world.database.read(
        sql -> {
          Point point = world.plant.pointTagged(sql, tag).orElseThrow();
          return world.calibrations.ofLoop(sql, point.id().number(), Optional.empty(), 100);
        });
  }

  @Test
  void isAsBigAsItSays() {
    assertThat(receipt.counts().refused()).isZero();
    assertThat(receipt.counts().added()).isGreaterThan(5_000);
    assertThat(judged).hasSize(107);
    assertThat(DemoDesign.TRAINS).hasSizeGreaterThanOrEqualTo(6);
    assertThat(world.database.<Integer>read(sql -> world.families.all(sql).size())).isEqualTo(5);
    assertThat(DemoScenario.played().shop.all()).hasSizeGreaterThan(300);
  }

  @Test
  void aboutNineLoopsInTenAreSound() {
    Map<Verdict, Long> counts =
        judged.values().stream()
            .collect(Collectors.groupingBy(Judgement::verdict, Collectors.counting()));
    assertThat(counts)
        .containsEntry(Verdict.REFUSED, 6L)
        .containsEntry(Verdict.UNKNOWN, 1L)
        .containsEntry(Verdict.ATTENTION, 1L)
        .containsEntry(Verdict.MATCHES, 99L);
  }

  @Test
  void twoPairsAreMirrored() {
    assertThat(balance(DemoFaults.CABLES_SWAPPED.get(0))).isEqualTo(Length.ofMetres("0.5"));
    assertThat(balance(DemoFaults.CABLES_SWAPPED.get(1))).isEqualTo(Length.ofMetres("-0.5"));
    assertThat(balance(DemoFaults.PROBES_SWAPPED.get(0))).isEqualTo(Length.ofMetres("-0.5"));
    assertThat(balance(DemoFaults.PROBES_SWAPPED.get(1))).isEqualTo(Length.ofMetres("0.5"));
  }

  @Test
  void aCurveTakenWithSwappedProbesShowsItsFingerprint() {
    Calibrated shorter = calibrations(DemoFaults.PROBES_SWAPPED.get(0)).get(0);
    Calibrated longer = calibrations(DemoFaults.PROBES_SWAPPED.get(1)).get(0);
    assertThat(shorter.verdict()).isEqualTo("does not conform");
    assertThat(shorter.numbers().isfTrend()).isEqualTo("rises");
    assertThat(longer.verdict()).isEqualTo("does not conform");
    assertThat(longer.numbers().isfTrend()).isEqualTo("falls");
  }

  @Test
  void oneLoopIsTooLongThoughItsVoltageLooksRight() {
    assertThat(balance(DemoFaults.TOO_LONG_AND_REGAPPED)).isEqualTo(Length.ofMetres("1"));
    Calibrated last = calibrations(DemoFaults.TOO_LONG_AND_REGAPPED).get(0);
    assertThat(last.zero()).isEqualTo("electrical zero");
    assertThat(voltsAt(last, 1250)).isCloseTo(-8.9, org.assertj.core.api.Assertions.within(0.05));
    assertThat(last.numbers().asf().orElseThrow()).isLessThan(200 / 25.4 * 0.9);
    assertThat(last.numbers().isfTrend()).isEqualTo("falls");
    assertThat(last.verdict()).isEqualTo("does not conform");
  }

  private static double voltsAt(Calibrated calibrated, double gapMicrometres) {
    return world
        .database
        .read(sql -> world.calibrations.curve(sql, calibrated))
        .orElseThrow()
        .readings()
        .stream()
        .filter(reading -> reading.gapMicrometres() == gapMicrometres)
        .findFirst()
        .orElseThrow()
        .volts();
  }

  @Test
  void oneDriverIsTunedForAnotherLength() {
    assertThat(balance(DemoFaults.DRIVER_OF_ANOTHER_LENGTH)).isEqualTo(Length.ofMetres("-1.524"));
    assertThat(of(DemoFaults.DRIVER_OF_ANOTHER_LENGTH).verdict()).isEqualTo(Verdict.REFUSED);
  }

  @Test
  void oneLoopWasChangedSinceItsCalibration() {
    Judgement judgement = of(DemoFaults.CHANGED_SINCE_CALIBRATION);
    assertThat(judgement.verdict()).isEqualTo(Verdict.ATTENTION);
    assertThat(worst(judgement).rule().name()).isEqualTo("calibrated as fitted");
    assertThat(judgement.balance()).isEqualTo(Length.ZERO);
  }

  private static Finding worst(Judgement judgement) {
    return judgement.findings().get(0);
  }

  @Test
  void oneLengthIsNotKnown() {
    Judgement judgement = of(DemoFaults.UNKNOWN_LENGTH);
    assertThat(judgement.verdict()).isEqualTo(Verdict.UNKNOWN);
    assertThat(judgement.balance()).isNull();
    assertThat(calibrations(DemoFaults.UNKNOWN_LENGTH).get(0).verdict()).isEqualTo("conforms");
  }

  @Test
  void oneLoopDriftsAndStillConforms() {
    List<Calibrated> newestFirst = calibrations(DemoFaults.DRIFTING);
    assertThat(of(DemoFaults.DRIFTING).verdict()).isEqualTo(Verdict.MATCHES);
    assertThat(newestFirst).hasSize(5).allMatch(c -> "conforms".equals(c.verdict()));
    List<Double> slopes = newestFirst.stream().map(c -> c.numbers().slope().orElseThrow()).toList();
    assertThat(slopes).isSorted();
    assertThat(slopes.get(0) / slopes.get(4)).isLessThan(0.985);
  }

  @Test
  void oneLoopFailedAsFoundAndConformsWithANewCable() {
    List<Calibrated> newestFirst = calibrations(DemoFaults.CONFORMS_AFTER_EXCHANGE);
    assertThat(newestFirst.get(0).stage()).isEqualTo(Stage.AS_LEFT);
    assertThat(newestFirst.get(0).verdict()).isEqualTo("conforms");
    assertThat(newestFirst.get(1).stage()).isEqualTo(Stage.AS_FOUND);
    assertThat(newestFirst.get(1).verdict()).isEqualTo("does not conform");
    assertThat(newestFirst.get(0).fingerprint()).isNotEqualTo(newestFirst.get(1).fingerprint());
    assertThat(of(DemoFaults.CONFORMS_AFTER_EXCHANGE).verdict()).isEqualTo(Verdict.MATCHES);
  }

  @Test
  void everyOtherCurveConforms() {
    Map<String, Long> bad =
        judged.keySet().stream()
            .map(DemoScenarioTest::calibrations)
            .flatMap(Collection::stream)
            .filter(c -> !"conforms".equals(c.verdict()))
            .collect(Collectors.groupingBy(c -> String.valueOf(c.tag()), Collectors.counting()));
    assertThat(bad)
        .containsOnly(
            Map.entry(DemoFaults.PROBES_SWAPPED.get(0), 1L),
            Map.entry(DemoFaults.PROBES_SWAPPED.get(1), 1L),
            Map.entry(DemoFaults.TOO_LONG_AND_REGAPPED, 1L),
            Map.entry(DemoFaults.CONFORMS_AFTER_EXCHANGE, 1L),
            Map.entry("K601-V3X", 1L));
  }

  @Test
  void itsDaysEndShortlyBeforeTodayAndNeverAfter() {
    Instant last =
        judged.keySet().stream()
            .flatMap(tag -> calibrations(tag).stream())
            .map(Calibrated::measuredAt)
            .max(Instant::compareTo)
            .orElseThrow();
    assertThat(last).isBefore(CLOCK.instant());
    assertThat(last).isAfter(CLOCK.instant().minusSeconds(60L * 86_400));
  }

  @Test
  void loadingItAgainChangesNothing() {
    long head = world.database.read(loopwright.journal.JournalStore::head);
    var again =
        world.importing.plan(
            DemoPlant.files(
                java.time.LocalDate.ofInstant(CLOCK.instant(), java.time.ZoneOffset.UTC)),
            Optional.empty());
    assertThat(again.problems()).isEmpty();
    assertThat(again.counts().toWrite()).isZero();
    assertThat(again.counts().unchanged()).isEqualTo(receipt.counts().added());
    assertThat(world.database.<Long>read(loopwright.journal.JournalStore::head)).isEqualTo(head);
  }
}
