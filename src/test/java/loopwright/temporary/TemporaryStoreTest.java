package loopwright.temporary;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.testing.Engine;
import loopwright.testing.FullWorld;
import loopwright.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.AfterParameterizedClassInvocation;
import org.junit.jupiter.params.BeforeParameterizedClassInvocation;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Temporary fits on both engines. */
@ParameterizedClass
@EnumSource(Engine.class)
class TemporaryStoreTest {
  private static final Act ACT = new Act(null, "A. Tester", "planner", "plan", "a test");

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

  @Test
  void theLastDayCountsUntilItStaysForGood() {
    TemporaryStore store = new TemporaryStore();
    TemporaryFit full = database.read(sql -> store.one(sql, 1)).orElseThrow();
    assertThat(full.returnOn()).isEqualTo(LocalDate.parse("2026-06-01"));
    assertThat(full.firstDay()).isEqualTo(LocalDate.parse("2026-05-01"));
    assertThat(full.staysForGood()).isTrue();
    assertThat(full.isOpen()).isFalse();
    long fresh =
        database.write(
            ACT,
            tx ->
                store.add(
                    tx,
                    full.point(),
                    full.slot(),
                    full.component(),
                    new TemporaryStore.Said(
                        LocalDate.parse("2026-04-10"), "", "trial", "P. Lanner")));
    List<TemporaryFit> all =
        database.<List<TemporaryFit>>read(sql -> store.ofComponent(sql, full.component()));
    assertThat(all).extracting(TemporaryFit::id).containsExactly(fresh, 1L);
    List<TemporaryFit> open =
        database.<List<TemporaryFit>>read(sql -> store.open(sql, List.of(full.point())));
    assertThat(open)
        .as("open while the part is believed to sit there")
        .isEqualTo(all.stream().filter(TemporaryFit::isOpen).toList());
    assertThat(database.<List<TemporaryFit>>read(store::open)).isEqualTo(open);
    assertThat(
            database.<List<TemporaryFit>>read(
                sql ->
                    store.openAt(
                        sql,
                        List.of(full.point()),
                        java.time.Instant.parse("2026-04-01T20:00:01Z"))))
        .extracting(TemporaryFit::id)
        .as("what is open now was open then")
        .containsExactlyElementsOf(open.stream().map(TemporaryFit::id).toList());
  }
}
