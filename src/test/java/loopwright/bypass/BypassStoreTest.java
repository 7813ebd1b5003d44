package loopwright.bypass;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import java.util.function.Function;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.testing.Engine;
import loopwright.testing.FullWorld;
import loopwright.testing.TestClock;
import org.jooq.DSLContext;
import org.jooq.exception.IntegrityConstraintViolationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.AfterParameterizedClassInvocation;
import org.junit.jupiter.params.BeforeParameterizedClassInvocation;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** The bypass log on both engines. */
@ParameterizedClass
@EnumSource(Engine.class)
class BypassStoreTest {
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
  void provedOnesAreOpenNoLonger() {
    BypassStore store = new BypassStore();
    assertThat(read(sql -> store.open(sql, 9))).isEmpty();
    Bypass proved = database.read(sql -> store.ofOutage(sql, 1, 9)).get(0);
    assertThat(proved.isOpen()).isFalse();
    assertThat(proved.ownerNow()).isEqualTo("N. Ext");
    Instant began = Instant.parse("2026-04-01T10:00:00Z");
    long id =
        database.write(
            ACT,
            tx ->
                store.add(
                    tx,
                    new NewBypass(
                        1, null, "BP-8", "trip", "1oo1", "A", "B", began, began.plusSeconds(60))));
    assertThat(read(sql -> store.open(sql, 9))).extracting(Bypass::id).contains(id);
    assertThatThrownBy(
            () ->
                database.write(
                    ACT,
                    tx -> {
                      store.step(tx, id, Bypass.PROVED, 1, 1L, "", tx.at(), "by myself");
                      return 0;
                    }))
        .isInstanceOf(IntegrityConstraintViolationException.class);
  }
}
