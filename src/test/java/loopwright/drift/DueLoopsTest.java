package loopwright.drift;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import loopwright.calibration.NewCalibration;
import loopwright.calibration.Stage;
import loopwright.calibration.Zero;
import loopwright.db.Act;
import loopwright.db.Tx;
import loopwright.importing.ImportWorld;
import loopwright.loop.Chain;
import loopwright.loop.Content;
import loopwright.loop.DueLoops;
import loopwright.testing.Engine;
import loopwright.testing.RawWorld;
import loopwright.testing.TestClock;
import org.jooq.DSLContext;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.AfterParameterizedClassInvocation;
import org.junit.jupiter.params.BeforeParameterizedClassInvocation;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Due dates: the last as-left and the interval later. */
@ParameterizedClass
@EnumSource(Engine.class)
class DueLoopsTest {
  private static final Act ACT = new Act(null, "A. Tester", "technician", "calibration", "outage");
  private static TestClock clock;
  private static ImportWorld world;
  private static long machine;
  private static int points;
  private final DueLoops due = new DueLoops();

  @Parameter Engine engine;

  @BeforeParameterizedClassInvocation
  static void open(Engine engine) {
    clock = new TestClock("2026-03-01T10:00:00Z");
    world = new ImportWorld(engine, clock);
    machine = write(tx -> RawWorld.machine(tx, "M"));
  }

  @AfterParameterizedClassInvocation
  static void close() {
    world.close();
  }

  private static <R> R write(Function<Tx, R> work) {
    return world.database.write(ACT, work);
  }

  private static <R> R read(Function<DSLContext, R> work) {
    return world.database.read(work::apply);
  }

  /** A point with its parts since 2024 and an interval; empty for none. */
  private static long point(Optional<Integer> months) {
    int n = ++points;
    return write(
        tx -> {
          long point = RawWorld.point(tx, machine, "D-" + n);
          months.ifPresent(
              each ->
                  tx.sql()
                      .execute("UPDATE point SET interval_months = ? WHERE id = ?", each, point));
          Chain chain =
              Chain.of(
                  new Content.Part(RawWorld.component(tx, "probe", "PR-" + n)),
                  List.of(new Content.Part(RawWorld.component(tx, "extension cable", "XC-" + n))),
                  new Content.Part(RawWorld.component(tx, "driver", "DR-" + n)));
          world.configuration.survey(tx, point, chain, Instant.parse("2023-01-01T09:00:00Z"), "");
          return point;
        });
  }

  private static void keep(long point, Stage stage, String at) {
    NewCalibration fresh =
        new NewCalibration(
            point,
            stage,
            Instant.parse(at),
            "A. Tester",
            Zero.NOT_RECORDED,
            "",
            new NewCalibration.NoCurve("meter broke"),
            "entered");
    write(tx -> world.calibrations.keep(tx, fresh));
  }

  private Optional<LocalDate> dueOf(long point) {
    return read(sql -> due.of(sql, point));
  }

  @Test
  void itCountsFromTheLastAsLeftAndKnowsNothingWithoutOne() {
    long point = point(Optional.of(24));
    assertThat(dueOf(point)).isEmpty();
    keep(point, Stage.AS_LEFT, "2024-02-29T09:00:00Z");
    assertThat(dueOf(point)).contains(LocalDate.parse("2026-02-28"));
    keep(point, Stage.AS_FOUND, "2025-06-01T09:00:00Z");
    assertThat(dueOf(point)).as("an as-found sets nothing").contains(LocalDate.parse("2026-02-28"));
    keep(point, Stage.NOTHING_TOUCHED, "2025-06-02T09:00:00Z");
    assertThat(dueOf(point)).contains(LocalDate.parse("2027-06-02"));
    long without = point(Optional.empty());
    keep(without, Stage.AS_LEFT, "2024-02-01T09:00:00Z");
    assertThat(dueOf(without)).isEmpty();
  }

  @Test
  void whatIsDueTodayIsNotOverdue() {
    long point = point(Optional.of(12));
    keep(point, Stage.AS_LEFT, "2025-03-01T09:00:00Z");
    String tag = "D-" + points;
    assertThat(overdue(tag, clock.instant())).isEqualTo("2026-03-01 in time");
    assertThat(overdue(tag, clock.instant().plus(Duration.ofHours(14))))
        .as("past midnight at the site")
        .isEqualTo("2026-03-01 overdue");
    List<DueLoops.OverdueTrain> now = read(sql -> due.overdueByTrain(sql, clock.instant()));
    assertThat(now).isEmpty();
    Instant later = clock.instant().plus(Duration.ofDays(1));
    List<DueLoops.OverdueTrain> tomorrow = read(sql -> due.overdueByTrain(sql, later));
    assertThat(tomorrow)
        .extracting(t -> t.trainCode() + " " + t.oldest())
        .containsExactly("M 2026-03-01");
  }

  private String overdue(String tag, Instant now) {
    List<DueLoops.Due> listed = read(sql -> due.until(sql, now, 0, null, 100));
    return listed.stream()
        .filter(one -> one.tag().equals(tag))
        .map(one -> one.dueOn() + (one.overdue() ? " overdue" : " in time"))
        .findFirst()
        .orElse("");
  }
}
