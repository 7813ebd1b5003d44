package loopwright.spare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.loop.Promises;
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

/** Reservations on both engines. */
@ParameterizedClass
@EnumSource(Engine.class)
class SpareStoreTest {
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
  void whatIsHeldIsToldWithItsShelfAndHeldOnce() {
    SpareStore store = new SpareStore();
    List<Held> held = database.read(sql -> store.ofOutage(sql, 1));
    assertThat(held).extracting(Held::component).containsExactly(1L);
    assertThat(read(sql -> store.ofComponents(sql, List.of(1L, 2L)))).isEqualTo(held);
    Map<Long, Promises.Promise> promised =
        database.read(sql -> Spares.promises().of(sql, List.of(1L, 2L)));
    assertThat(promised).containsOnlyKeys(1L);
    assertThatThrownBy(
            () ->
                database.write(
                    ACT,
                    tx -> {
                      store.hold(tx, 1, 2, "probe", 1, "matches", "none");
                      return 0;
                    }))
        .hasCauseInstanceOf(IntegrityConstraintViolationException.class);
    database.write(
        ACT,
        tx -> {
          store.release(tx, held.get(0), "not needed");
          store.hold(tx, 1, 2, "probe", 1, "matches", "none");
          return 0;
        });
    assertThat(read(sql -> store.ofOutage(sql, 1))).extracting(Held::point).containsExactly(2L);
  }

  @Test
  void ofEachSlotTheLastWordSaysWhetherASpareIsWanted() {
    WishStore wishes = new WishStore();
    assertThat(read(sql -> wishes.standing(sql, 1)))
        .extracting(WishStore.Standing::slot)
        .containsExactly("driver");
    database.write(
        ACT,
        tx -> {
          wishes.put(tx, 1, 1, "probe", true, "worn");
          wishes.put(tx, 1, 1, "driver", false, "repaired");
          return 0;
        });
    assertThat(read(sql -> wishes.standing(sql, 1)))
        .extracting(WishStore.Standing::slot, WishStore.Standing::reason)
        .containsExactly(org.assertj.core.groups.Tuple.tuple("probe", "worn"));
    assertThat(read(sql -> wishes.standing(sql, 2))).isEmpty();
  }
}
