package loopwright.kit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.DbProblem;
import loopwright.loop.PartSet;
import loopwright.problem.Refused;
import loopwright.testing.Engine;
import loopwright.testing.FullWorld;
import loopwright.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.AfterParameterizedClassInvocation;
import org.junit.jupiter.params.BeforeParameterizedClassInvocation;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Kits on both engines. */
@ParameterizedClass
@EnumSource(Engine.class)
class KitStoreTest {
  private static final Act ACT = new Act(null, "A. Tester", "engineer", "keep", "a test");

  private static Database database;

  @Parameter Engine engine;

  @BeforeParameterizedClassInvocation
  static void open(Engine engine) {
    database = engine.open(new TestClock("2026-04-01T20:00:00Z"));
    FullWorld.fill(database);
  }

  @AfterParameterizedClassInvocation
  static void close() {
    database.close();
  }

  private final KitStore store = new KitStore();

  private Kit one(long id) {
    return database.read(sql -> store.one(sql, id)).orElseThrow();
  }

  private List<String> names(boolean all) {
    return database.read(sql -> store.newest(sql, all, 9)).stream().map(Kit::name).toList();
  }

  private Map<Long, Kit> holding(long... components) {
    List<Long> asked = Arrays.stream(components).boxed().toList();
    return database.read(sql -> store.holding(sql, asked));
  }

  private boolean isNamed(String name) {
    return database.read(sql -> store.named(sql, name)).isPresent();
  }

  @Test
  void aPartBelongsToOneKitUntilThatIsDissolved() {
    assertThat(one(1).dissolved()).isNull();
    assertThat(one(2).dissolved()).isEqualTo("cable scrapped");
    assertThat(names(false)).containsExactly("Pump B");
    assertThat(names(true)).containsExactly("Pump C", "Pump B");
    assertThat(holding(1, 2)).containsOnlyKeys(1L);
    assertThat(isNamed("pUMP b")).isTrue();
    assertThat(isNamed("Pump C")).as("dissolved").isFalse();
    PartSet set = PartSet.read("probe:1/driver:3").orElseThrow();
    assertThatThrownBy(() -> database.write(ACT, tx -> store.add(tx, "Other", set, "")))
        .isInstanceOfSatisfying(
            Refused.class, refused -> assertThat(refused.problem()).isEqualTo(DbProblem.MEANWHILE));
    long fresh =
        database.write(
            ACT,
            tx -> {
              store.hold(tx, set);
              store.dissolve(tx, one(1), "split");
              return store.add(tx, "Other", set, "");
            });
    assertThat(holding(1, 3).values()).extracting(Kit::id).containsExactly(fresh, fresh);
    assertThat(one(1).dissolved()).isEqualTo("split");
  }
}
