package loopwright.outage;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.testing.Engine;
import loopwright.testing.FullWorld;
import loopwright.testing.TestClock;
import org.jooq.DSLContext;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.AfterParameterizedClassInvocation;
import org.junit.jupiter.params.BeforeParameterizedClassInvocation;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Outages and their scope on both engines. */
@ParameterizedClass
@EnumSource(Engine.class)
class OutageStoreTest {
  private static final Act ACT = new Act(null, "A. Tester", "planner", "plan", "a test");

  private static Database database;

  @Parameter Engine engine;

  @BeforeParameterizedClassInvocation
  static void open(Engine engine) {
    database = engine.open(new TestClock("2026-04-01T20:00:00Z"));
    FullWorld.fill(database);
  }

  private static <R> List<R> read(Function<DSLContext, List<R>> question) {
    return database.read(question::apply);
  }

  @AfterParameterizedClassInvocation
  static void close() {
    database.close();
  }

  @Test
  void anOutageComesBackWithItsTrainsAndSteps() {
    Outage outage = database.read(sql -> new OutageStore().one(sql, 1)).orElseThrow();
    assertThat(outage.trainCodes()).isEqualTo("T-100");
    assertThat(outage.begins()).isEqualTo("2026-04-01");
    assertThat(outage.state()).isEqualTo(OutageState.PLANNED);
    assertThat(read(sql -> new OutageStore().ofTrain(sql, 1))).containsExactly(outage);
  }

  @Test
  void ofEachLoopTheLastRowCounts() {
    ScopeStore store = new ScopeStore();
    List<ScopeLine> before = database.read(sql -> store.lines(sql, 1));
    assertThat(before).extracting(ScopeLine::taken).containsExactly(true, false);
    database.write(
        ACT,
        tx -> {
          new OutageStore().hold(tx, 1);
          store.put(tx, 1, 2, true, Set.of(Work.AS_LEFT), "in reach again");
          return 0;
        });
    List<ScopeLine> after = database.read(sql -> store.lines(sql, 1));
    assertThat(after).extracting(ScopeLine::taken).containsExactly(true, true);
    assertThat(after.get(1).works()).containsExactly(Work.AS_LEFT);
    Map<Work, WorkSteps.Written> steps = database.read(store::templates);
    assertThat(steps.get(Work.VERIFY).steps()).hasSize(2);
  }
}
