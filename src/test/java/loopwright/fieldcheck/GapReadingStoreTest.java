package loopwright.fieldcheck;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import loopwright.cause.TappingPoint;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.journal.JournalStore;
import loopwright.journal.Verification;
import loopwright.problem.Refused;
import loopwright.testing.Engine;
import loopwright.testing.RawWorld;
import loopwright.testing.TestClock;
import loopwright.time.Viewpoint;
import loopwright.units.Reported;
import loopwright.units.Unit;
import org.jooq.DSLContext;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.AfterParameterizedClassInvocation;
import org.junit.jupiter.params.BeforeParameterizedClassInvocation;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Gap voltages kept with what makes them comparable. */
@ParameterizedClass
@EnumSource(Engine.class)
class GapReadingStoreTest {
  private static final Act ACT = new Act(null, "A. Tester", "technician", "gap reading", "round");
  private static final Instant AT = Instant.parse("2026-02-03T08:00:00Z");
  private static final TestClock CLOCK = new TestClock("2026-03-01T10:00:00Z");

  private static Database database;
  private static long machine;
  private static int points;
  private final GapReadings readings = new GapReadings(CLOCK);
  private long point;

  @Parameter Engine engine;

  @BeforeParameterizedClassInvocation
  static void open(Engine engine) {
    database = engine.open(CLOCK);
    machine = write(tx -> RawWorld.machine(tx, "M"));
  }

  @AfterParameterizedClassInvocation
  static void close() {
    database.close();
  }

  @BeforeEach
  void another() {
    point = write(tx -> RawWorld.point(tx, machine, "V-" + ++points));
  }

  private static <R> R write(Function<Tx, R> work) {
    return database.write(ACT, work);
  }

  private static <R> R read(Function<DSLContext, R> work) {
    return database.read(work::apply);
  }

  private NewGapReading fresh(String volts, Unit unit, MachineState state, Instant at) {
    return new NewGapReading(
        point,
        at,
        "T. Echnician",
        Reported.read(volts, unit).orElseThrow(),
        TappingPoint.RACK,
        state,
        Warmth.COLD,
        "mid-float",
        "after locking",
        "entered");
  }

  private List<GapReading> ofPoint(Viewpoint viewpoint) {
    return read(sql -> readings.ofPoint(sql, point, viewpoint, 10));
  }

  private String newest(MachineState state, Instant before) {
    Map<Long, GapReading> found = read(sql -> readings.newest(sql, List.of(point), state, before));
    return found.values().stream().map(r -> r.volts().typed()).findFirst().orElse("");
  }

  @Test
  void whatWasTypedComesBackWithTheStateOfTheMachine() {
    write(tx -> readings.keep(tx, fresh("-10200.0", Unit.MILLIVOLT, MachineState.REST, AT)));
    GapReading kept = ofPoint(Viewpoint.LATEST).get(0);
    assertThat(kept.volts()).hasToString("-10200.0 mV");
    assertThat(kept.volts().canonical()).isEqualTo(-10.2);
    assertThat(kept)
        .extracting(
            GapReading::readAt,
            GapReading::readBy,
            GapReading::tappedAt,
            GapReading::state,
            GapReading::warmth,
            GapReading::rotorPosition,
            GapReading::note,
            GapReading::origin)
        .containsExactly(
            AT,
            "T. Echnician",
            TappingPoint.RACK,
            MachineState.REST,
            Warmth.COLD,
            "mid-float",
            "after locking",
            "entered");
  }

  @Test
  void oneSentTwiceIsOneRecordAndOneOfAnotherVoltageStandsBesideIt() {
    NewGapReading first = fresh("-10.2", Unit.VOLT, MachineState.REST, AT);
    write(tx -> readings.keep(tx, first));
    assertThatThrownBy(() -> write(tx -> readings.keep(tx, first)))
        .isInstanceOf(Refused.class)
        .hasMessageContaining("kept already");
    NewGapReading other = fresh("-10.3", Unit.VOLT, MachineState.REST, AT);
    int kept = write(tx -> readings.keepAll(tx, List.of(first, other, other)));
    assertThat(kept).isEqualTo(1);
    assertThat(ofPoint(Viewpoint.LATEST))
        .extracting(r -> r.volts().typed())
        .containsExactly("-10.3", "-10.2");
  }

  @Test
  void onlyLikeIsComparedWithLike() {
    Instant later = AT.plusSeconds(3600);
    write(
        tx ->
            readings.keepAll(
                tx,
                List.of(
                    fresh("-10.2", Unit.VOLT, MachineState.REST, AT),
                    fresh("-9.1", Unit.VOLT, MachineState.RUNNING, later))));
    assertThat(newest(MachineState.REST, CLOCK.instant())).isEqualTo("-10.2");
    assertThat(newest(MachineState.RUNNING, later)).as("before, not at, that moment").isEmpty();
    List<GapReading> since = read(sql -> readings.since(sql, List.of(point), later));
    assertThat(since).hasSize(1);
    List<GapReading> both = ofPoint(Viewpoint.LATEST);
    assertThat(both.get(0).comparesWith(both.get(1))).isFalse();
  }

  @Test
  void thePastShowsWhatHadBeenReadAndWasKnownThen() {
    write(tx -> readings.keep(tx, fresh("-10.2", Unit.VOLT, MachineState.REST, AT)));
    long known = read(JournalStore::head);
    write(tx -> readings.keep(tx, fresh("-8", Unit.VOLT, MachineState.REST, AT.minusSeconds(60))));
    assertThat(ofPoint(Viewpoint.of(AT.minusSeconds(1)))).hasSize(1);
    assertThat(ofPoint(new Viewpoint(AT, known)))
        .extracting(r -> r.volts().typed())
        .containsExactly("-10.2");
  }

  @Test
  void whatNoLoopCanGiveIsRefused() {
    assertThatThrownBy(() -> fresh("10.2", Unit.VOLT, MachineState.REST, AT))
        .hasMessageContaining("10.2 V is positive");
    assertThatThrownBy(() -> fresh("-102", Unit.VOLT, MachineState.REST, AT))
        .hasMessageContaining("more than any supply");
    NewGapReading early =
        fresh("-10", Unit.VOLT, MachineState.REST, CLOCK.instant().plusSeconds(1));
    assertThatThrownBy(() -> write(tx -> readings.keep(tx, early)))
        .hasMessageContaining("in the future");
    assertThat(ofPoint(Viewpoint.LATEST)).isEmpty();
  }

  @Test
  void theRecordAccountsForThem() {
    write(tx -> readings.keep(tx, fresh("-10.2", Unit.VOLT, MachineState.REST, AT)));
    assertThat(Verification.of(database).agrees()).isTrue();
  }

  private NewGapReading at(
      String volts, MachineState state, TappingPoint tap, Warmth warmth, int hour) {
    return new NewGapReading(
        point,
        AT.plus(Duration.ofHours(hour)),
        "T. Echnician",
        Reported.read(volts, Unit.VOLT).orElseThrow(),
        tap,
        state,
        warmth,
        "",
        "",
        "imported");
  }

  /** The database finds the very reading that {@link GapReading#comparesWith} allows. */
  @Test
  void besideEachStandsTheNewestThatComparesFromBeforeItsChange() {
    write(
        tx ->
            readings.keepAll(
                tx,
                List.of(
                    at("-10.0", MachineState.REST, TappingPoint.RACK, Warmth.COLD, 1),
                    at("-10.1", MachineState.REST, TappingPoint.RACK, Warmth.COLD, 2),
                    at("-9.9", MachineState.REST, TappingPoint.RACK, Warmth.HOT, 3),
                    at("-9.8", MachineState.REST, TappingPoint.DRIVER, Warmth.COLD, 4),
                    at("-9.0", MachineState.RUNNING, TappingPoint.RACK, Warmth.HOT, 5))));
    long change =
        write(
            tx -> {
              readings.keepAll(
                  tx,
                  List.of(
                      at("-9.5", MachineState.REST, TappingPoint.RACK, Warmth.COLD, 10),
                      at("-9.6", MachineState.REST, TappingPoint.RACK, Warmth.NOT_RECORDED, 11),
                      at("-9.7", MachineState.TURNING, TappingPoint.RACK, Warmth.COLD, 12),
                      at("-0.5", MachineState.TURNING, TappingPoint.RACK, Warmth.COLD, 13)));
              return tx.changeId();
            });
    List<GapReadings.Beside> all = read(sql -> readings.besides(sql, change, List.of(point)));
    assertThat(all.stream().map(GapReadingStoreTest::beforeOf))
        .containsExactly("-10.1", "-9.9", "none", "none");
    assertThat(all.get(0).now().comparesWith(all.get(0).before())).isTrue();
    GapReadings.Counted counted = read(sql -> readings.count(sql, change));
    assertThat(counted).isEqualTo(new GapReadings.Counted(4, 2));
    GapReadings.Notable notable = new GapReadings.Notable(0.5, -1, -22);
    List<GapReadings.Beside> some = read(sql -> readings.besides(sql, change, notable, 0, 10));
    assertThat(some.stream().map(each -> each.now().volts().typed()))
        .containsExactly("-9.5", "-0.5");
    long last = some.get(0).now().id();
    List<GapReadings.Beside> rest = read(sql -> readings.besides(sql, change, notable, last, 10));
    assertThat(rest).hasSize(1);
  }

  private static String beforeOf(GapReadings.Beside each) {
    return each.before() == null ? "none" : each.before().volts().typed();
  }
}
