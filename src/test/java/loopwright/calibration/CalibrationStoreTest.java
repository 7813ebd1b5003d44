package loopwright.calibration;

import static loopwright.db.gen.Tables.CALIBRATION_READING;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.stream.Stream;
import loopwright.curve.Curve;
import loopwright.curve.CurveAnalysis;
import loopwright.curve.CurveReading;
import loopwright.curve.CurveResult;
import loopwright.curve.Run;
import loopwright.journal.Verification;
import loopwright.loop.AsLeftFacts;
import loopwright.loop.PartSet;
import loopwright.loop.Slot;
import loopwright.matching.Calibration;
import loopwright.problem.Refused;
import loopwright.testing.Engine;
import loopwright.time.Viewpoint;
import org.jooq.exception.DataAccessException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.AfterParameterizedClassInvocation;
import org.junit.jupiter.params.BeforeParameterizedClassInvocation;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Curves here are synthetic. */
@Tag("zone")
@ParameterizedClass
@EnumSource(Engine.class)
class CalibrationStoreTest {
  private static CalibrationWorld world;

  @Parameter Engine engine;

  @BeforeParameterizedClassInvocation
  static void open(Engine engine) {
    world = new CalibrationWorld(engine);
  }

  @AfterParameterizedClassInvocation
  static void close() {
    world.close();
  }

  @BeforeEach
  void another() {
    world.another();
  }

  private List<CurveReading> readings(Calibrated kept) {
    return world.database().read(sql -> world.calibrations.readings(sql, kept));
  }

  private Optional<Curve> curve(Calibrated kept) {
    return world.database().read(sql -> world.calibrations.curve(sql, kept));
  }

  @Test
  void whatWasTypedComesBackAndTheNumbersAreThoseOfTheAnalysis() {
    NewCalibration fresh = world.curve();
    Calibrated kept = world.numbered(world.keep(fresh));
    assertThat(readings(kept)).isEqualTo(fresh.readings());
    assertThat(CalibrationWorld.typed(readings(kept))).contains("up 50 mil -10.00 V");
    assertThat(kept.measuredAt()).isEqualTo(CalibrationWorld.TAKEN);
    assertThat(kept.stage()).isEqualTo(Stage.AS_FOUND);
    assertThat(kept.performedBy()).isEqualTo("A. Tester");
    assertThat(kept.zero()).isEqualTo("mechanical touch");
    assertThat(kept.targetAlloy()).isEqualTo("4140");
    assertThat(kept.outcome()).isEqualTo("conforms");
    assertThat(kept.analysisVersion()).isEqualTo(CurveAnalysis.ANALYSIS_VERSION);
    assertThat(kept.reason()).isEqualTo("outage");
    CurveResult again = CurveAnalysis.of(curve(kept).orElseThrow(), world.profile.profile());
    assertThat(kept.numbers().asf()).isEqualTo(OptionalDouble.of(again.asf()));
    assertThat(kept.numbers().maxDsl()).isEqualTo(OptionalDouble.of(again.maxDsl()));
    assertThat(again.asf()).isCloseTo(200 / 25.4, within(1e-9));
  }

  @Test
  void upAndDownAndMagnitudesAreKeptAsTyped() {
    String[] volts = {"2,00", "4", "6.000", "8", "10", "12", "14", "16", "18"};
    List<CurveReading> both =
        Stream.of(Run.values())
            .flatMap(run -> CalibrationWorld.readings(run, volts).stream())
            .toList();
    Calibrated kept =
        world.numbered(
            world.keep(
                CalibrationWorld.of(
                    world.point,
                    Stage.AS_LEFT,
                    CalibrationWorld.TAKEN,
                    new NewCalibration.Measured(
                        new Curve(both), world.profile.version(), world.profile.profile()))));
    assertThat(CalibrationWorld.typed(readings(kept)))
        .hasSize(18)
        .startsWith("up 10 mil 2,00 V", "up 20 mil 4 V", "up 30 mil 6.000 V")
        .endsWith("down 90 mil 18 V");
  }

  @Test
  void noCurveKeepsItsReasonAndWhateverWasRead() {
    List<CurveReading> two = CalibrationWorld.readings(Run.UP, "-0.71", "-0.72");
    Calibrated kept =
        world.numbered(
            world.keep(
                CalibrationWorld.of(
                    world.point,
                    Stage.AS_FOUND,
                    CalibrationWorld.TAKEN,
                    new NewCalibration.NoCurve("output dead", two))));
    assertThat(kept.outcome()).isEqualTo("no curve");
    assertThat(kept.noCurveReason()).isEqualTo("output dead");
    assertThat(readings(kept)).isEqualTo(two);
    assertThat(curve(kept)).isEmpty();
    assertThat(Verification.of(world.database()).agrees()).isTrue();
  }

  @Test
  void whatCannotBeKeptIsRefusedAndLeavesNothing() {
    NewCalibration future =
        world.curve(Stage.AS_FOUND, CalibrationWorld.TAKEN.plus(Duration.ofDays(60)), "-18");
    assertThatThrownBy(() -> world.keep(future)).hasMessageContaining("future");
    NewCalibration silent =
        CalibrationWorld.of(
            world.point, Stage.AS_FOUND, CalibrationWorld.TAKEN, new NewCalibration.NoCurve(" "));
    assertThatThrownBy(() -> world.keep(silent)).hasMessageContaining("why there is no curve");
    NewCalibration nobodyKnows =
        CalibrationWorld.of(
            world.bare, Stage.AS_FOUND, CalibrationWorld.TAKEN, world.curve().outcome());
    assertThatThrownBy(() -> world.keep(nobodyKnows)).hasMessageContaining("survey");
    NewCalibration beforeFitted =
        world.curve(Stage.AS_FOUND, CalibrationWorld.TAKEN.minus(Duration.ofDays(60)), "-18");
    assertThatThrownBy(() -> world.keep(beforeFitted)).hasMessageContaining("survey");
    assertThat(of(world.point)).isEmpty();
  }

  private List<Calibrated> of(long point) {
    return world
        .database()
        .read(sql -> world.calibrations.ofLoop(sql, point, Optional.empty(), 100));
  }

  @Test
  void theSameTwiceIsKeptOnce() {
    String first = world.keep(world.curve());
    assertThatThrownBy(() -> world.keep(world.curve()))
        .isInstanceOfSatisfying(
            Refused.class,
            refused -> assertThat(refused.problem()).isEqualTo(CalibrationProblem.ALREADY_KEPT))
        .hasMessageContaining(first);
    assertThat(of(world.point)).hasSize(1);
    world.keep(world.curve(Stage.AS_FOUND, CalibrationWorld.TAKEN, "-18.0"));
    world.keep(world.curve(Stage.AS_LEFT, CalibrationWorld.TAKEN, "-18.00"));
    assertThat(of(world.point)).as("typed otherwise, another stage").hasSize(3);
  }

  @Test
  void theSameFromManySidesAtOnceIsKeptOnce() {
    List<CompletableFuture<String>> clicks =
        Stream.generate(() -> CompletableFuture.supplyAsync(() -> world.keep(world.curve())))
            .limit(6)
            .toList();
    long kept =
        clicks.stream()
            .filter(
                click -> {
                  try {
                    click.join();
                    return true;
                  } catch (CompletionException refused) {
                    assertThat(refused.getCause()).isInstanceOf(Refused.class);
                    return false;
                  }
                })
            .count();
    assertThat(kept).isEqualTo(1);
    assertThat(of(world.point)).hasSize(1);
  }

  @Test
  void twoRecordsCannotStandInEachOthersPlace() {
    Calibrated one = world.numbered(world.keep(world.curve()));
    Calibrated other =
        world.numbered(
            world.keep(
                world.curve(Stage.AS_FOUND, CalibrationWorld.TAKEN.plusSeconds(60), "-18.1")));
    List<CompletableFuture<Boolean>> both =
        Stream.of(List.of(one, other), List.of(other, one))
            .map(pair -> CompletableFuture.supplyAsync(() -> superseded(pair.get(0), pair.get(1))))
            .toList();
    assertThat(both.stream().map(CompletableFuture::join)).containsExactlyInAnyOrder(true, false);
  }

  private static boolean superseded(Calibrated old, Calibrated by) {
    try {
      return world.write(
          tx -> {
            world.calibrations.supersede(tx, old, by, "misread");
            return true;
          });
    } catch (Refused refused) {
      return false;
    }
  }

  @Test
  void ofTwoOfOneMomentTheOneEnteredLaterCounts() {
    world.keep(world.curve(Stage.AS_LEFT, CalibrationWorld.TAKEN, "-17.00"));
    assertThat(latest()).isEqualTo(Calibration.Outcome.DOES_NOT_CONFORM);
    world.keep(world.curve(Stage.AS_LEFT, CalibrationWorld.TAKEN, "-18.00"));
    assertThat(latest()).isEqualTo(Calibration.Outcome.CONFORMS);
    world.keep(world.curve(Stage.AS_FOUND, CalibrationWorld.TAKEN.plusSeconds(60), "-17.00"));
    assertThat(latest()).as("an as-found is no as-left").isEqualTo(Calibration.Outcome.CONFORMS);
    world.keep(
        CalibrationWorld.of(
            world.point,
            Stage.NOTHING_TOUCHED,
            CalibrationWorld.TAKEN.plusSeconds(120),
            new NewCalibration.NoCurve("dead")));
    assertThat(latest()).isEqualTo(Calibration.Outcome.NO_CURVE);
  }

  private Calibration.Outcome latest() {
    return world
        .database()
        .read(
            sql ->
                world
                    .asLefts()
                    .latest(
                        sql, List.of(new AsLeftFacts.Fitted(world.point, "")), Viewpoint.LATEST))
        .get(world.point)
        .get(0)
        .outcome();
  }

  @Test
  void itBelongsToThePartsAndShowsWithEach() {
    String number = world.keep(world.curve());
    List<Calibrated> ofProbe =
        world.database().read(sql -> world.calibrations.ofComponent(sql, world.probe, 10));
    assertThat(ofProbe).extracting(Calibrated::number).containsExactly(number);
    assertThat(world.numbered(number).fingerprint()).startsWith("probe:" + world.probe + "/");
    assertThatThrownBy(() -> world.numbered("C-999")).hasMessageContaining("C-999");
  }

  @Test
  void onTheBenchAndWithAPartStandingInItBelongsToExactlyThoseParts() {
    String own = world.keep(world.curve(Stage.AS_LEFT, CalibrationWorld.TAKEN, "-18.00"));
    PartSet fitted = PartSet.read(world.numbered(own).fingerprint()).orElseThrow();
    world.another();
    PartSet set = fitted.with(Slot.PROBE, world.probe);
    NewCalibration later =
        world.curve(Stage.AS_LEFT, CalibrationWorld.TAKEN.plusSeconds(60), "-18.00");
    String bench = world.keep(later.of(new TakenWith.Bench(set)));
    long point = world.numbered(own).point();
    String stoodIn = world.keep(later.of(new TakenWith.StoodIn(point, set)));
    assertThat(world.numbered(bench).place()).isEqualTo("bench");
    assertThat(world.numbered(stoodIn).setup()).isEqualTo(Setup.STOOD_IN);
    assertThat(ofSet(set)).containsExactly(stoodIn, bench);
    assertThat(ofSet(fitted)).containsExactly(own);
    AsLeftFacts.Fitted loop = new AsLeftFacts.Fitted(point, fitted.fingerprint());
    List<AsLeftFacts.AsLeft> latest =
        world
            .database()
            .read(sql -> world.asLefts().latest(sql, List.of(loop), Viewpoint.LATEST))
            .getOrDefault(point, List.of());
    assertThat(latest)
        .as("the stood-in one is not the loop's")
        .extracting(AsLeftFacts.AsLeft::calibration)
        .containsExactly(world.numbered(own).id());
    assertThatThrownBy(() -> world.keep(later.of(new TakenWith.StoodIn(point, fitted))))
        .hasMessageContaining("exactly the parts fitted");
    assertThatThrownBy(() -> world.keep(later.of(new TakenWith.Bench(set))))
        .hasMessageContaining("already kept as " + bench);
  }

  private List<String> ofSet(PartSet set) {
    return world.database().read(sql -> world.calibrations.ofSet(sql, set, 9)).stream()
        .map(Calibrated::number)
        .toList();
  }

  /** The second wall behind the pages. */
  @Test
  void theDatabaseRefusesReadingsThatCannotBe() {
    String number = world.keep(world.curve());
    long id = world.numbered(number).id();
    assertThatThrownBy(() -> insert(id, -1, -2)).isInstanceOf(DataAccessException.class);
    assertThatThrownBy(() -> insert(id, 70_000, -2)).isInstanceOf(DataAccessException.class);
    assertThatThrownBy(() -> insert(id, 500, 2)).isInstanceOf(DataAccessException.class);
    assertThatThrownBy(() -> insert(id, 500, -31)).isInstanceOf(DataAccessException.class);
  }

  private int insert(long calibration, double gap, double volts) {
    return world.write(
        tx ->
            tx.sql()
                .insertInto(CALIBRATION_READING)
                .set(CALIBRATION_READING.CALIBRATION_ID, calibration)
                .set(CALIBRATION_READING.READING_NO, (short) 99)
                .set(CALIBRATION_READING.RUN, "up")
                .set(CALIBRATION_READING.GAP_TYPED, "1")
                .set(CALIBRATION_READING.GAP_UM, gap)
                .set(CALIBRATION_READING.VOLTS_TYPED, "1")
                .set(CALIBRATION_READING.VOLTS, volts)
                .execute());
  }
}
