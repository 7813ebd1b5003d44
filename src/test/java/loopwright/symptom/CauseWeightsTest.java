package loopwright.symptom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import loopwright.cause.Cause;
import loopwright.cause.CauseProblem;
import loopwright.cause.Weights;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.problem.Refused;
import loopwright.testing.Engine;
import loopwright.testing.TestClock;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Versions of weights on both engines: the newest counts, and going back is one more. */
class CauseWeightsTest {
  private static final Act ACT = new Act(null, "A. Tester", "engineer", "keep", "seen often");

  private final CauseWeights weights = new CauseWeights();

  private static Weights with(Cause cause, String weight) {
    Map<Cause, BigDecimal> changed = new EnumMap<>(Weights.builtIn().byCause());
    changed.put(cause, new BigDecimal(weight));
    return new Weights(changed, "");
  }

  /** Work of one change. */
  private interface Work {
    void in(Tx tx);
  }

  private static void write(Database database, Work work) {
    database.write(
        ACT,
        tx -> {
          work.in(tx);
          return ACT;
        });
  }

  @ParameterizedTest
  @EnumSource(Engine.class)
  void theNewestVersionCounts(Engine engine) {
    try (Database database = engine.open(new TestClock("2026-03-01T10:15:30Z"))) {
      assertThat(database.read(weights::now)).isEqualTo(Weights.builtIn());
      write(database, tx -> weights.set(tx, with(Cause.CONNECTOR, "0.123456")));
      write(database, tx -> weights.set(tx, with(Cause.CONNECTOR, "1000")));
      Weights now = database.read(weights::now);
      assertThat(now.isSameAs(with(Cause.CONNECTOR, "1000"))).isTrue();
      assertThat(now.origin())
          .isEqualTo("weights version 2, set 2026-03-01 10:15 UTC by A. Tester");
      assertThatThrownBy(() -> write(database, tx -> weights.set(tx, now)))
          .isInstanceOfSatisfying(
              Refused.class,
              refused -> assertThat(refused.problem()).isEqualTo(CauseProblem.SAME_WEIGHTS));
      write(database, weights::backToBuiltIn);
      assertThat(database.read(weights::now).isSameAs(Weights.builtIn())).isTrue();
      assertThat(database.read(weights::now).origin())
          .startsWith("weights version 3, built in")
          .endsWith("by A. Tester");
      assertThatThrownBy(() -> write(database, weights::backToBuiltIn)).isInstanceOf(Refused.class);
      List<WeightStore.Version> versions = database.read(sql -> weights.versions(sql, 9));
      assertThat(versions)
          .extracting(WeightStore.Version::id, WeightStore.Version::reason)
          .containsExactly(
              tuple(3L, "seen often"), tuple(2L, "seen often"), tuple(1L, "seen often"));
    }
  }
}
