package loopwright.gapround;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import loopwright.cause.TappingPoint;
import loopwright.db.Act;
import loopwright.fieldcheck.GapReadings;
import loopwright.importing.ImportWorld;
import loopwright.plant.Plant;
import loopwright.plant.PointWatch;
import loopwright.testing.Engine;
import loopwright.testing.RawWorld;
import loopwright.testing.TestClock;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A hundred thousand rows; the time is told, not asserted. */
@Tag("long")
class LargeRoundTest {
  private static final int POINTS = 10_000;
  private static final int MOMENTS = 10;
  private static final Act ACT = new Act(null, "A. Tester", "planner", "round", "to see");

  @ParameterizedTest
  @EnumSource(Engine.class)
  void aHundredThousandRows(Engine engine) {
    TestClock clock = new TestClock("2026-03-01T10:00:00Z");
    try (ImportWorld world = new ImportWorld(engine, clock)) {
      world.database.write(
          ACT,
          tx -> {
            long machine = RawWorld.machine(tx, "M");
            for (int i = 0; i < POINTS; i++) {
              RawWorld.point(tx, machine, "P-" + i);
            }
            return machine;
          });
      GapRounds rounds =
          new GapRounds(
              world.database, new Plant(PointWatch.NOBODY), new GapReadings(clock), clock);
      byte[] file = file();
      Instant start = Instant.now();
      GapRounds.Brought brought =
          rounds.bring("large.csv", file, TappingPoint.RACK, "A. Tester", ACT);
      Duration took = Duration.between(start, Instant.now());
      assertThat(brought.complaints().isEmpty()).isTrue();
      start = Instant.now();
      assertThat(rounds.report(brought.round(), 5).get(0)).contains("100000 rows, 100000 new");
      System.err.println(
          engine
              + ": "
              + file.length
              + " bytes brought in "
              + took.toMillis()
              + " ms, ranked in "
              + Duration.between(start, Instant.now()).toMillis()
              + " ms");
    }
  }

  private static byte[] file() {
    StringBuilder text = new StringBuilder("tag;volts;time;machine_state\n");
    for (int k = 0; k < MOMENTS; k++) {
      String day = "2026-01-" + (10 + k) + " 08:00";
      for (int i = 0; i < POINTS; i++) {
        text.append("P-").append(i).append(";-").append(8 + i % 3).append(';');
        text.append(day).append(";rest\n");
      }
    }
    return text.toString().getBytes(UTF_8);
  }
}
