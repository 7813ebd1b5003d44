package loopwright.journal;

import static loopwright.db.gen.Tables.SITE;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.SiteRecord;
import loopwright.testing.Engine;
import loopwright.testing.TestClock;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Verification sees one moment, whatever is written meanwhile; changes of many parts are whole. */
class VerificationBesideWritersTest {
  private static final Act ACT = new Act(null, "A. Tester", "engineer", "try", "to see");

  @ParameterizedTest
  @EnumSource(Engine.class)
  void verificationSeesOneMoment(Engine engine) throws Exception {
    try (Database database = engine.open(new TestClock("2026-03-01T10:15:30Z"))) {
      AtomicBoolean enough = new AtomicBoolean();
      AtomicInteger codes = new AtomicInteger();
      ExecutorService threads = Executors.newFixedThreadPool(3);
      try {
        List<Future<?>> writers =
            IntStream.range(0, 3)
                .<Future<?>>mapToObj(i -> threads.submit(() -> write(database, codes, enough)))
                .toList();
        long entries = 0;
        while (entries < 60) {
          Verdict verdict = Verification.of(database);
          assertThat(verdict.disagreement()).isNull();
          entries = verdict.entries();
        }
        enough.set(true);
        for (Future<?> writer : writers) {
          writer.get();
        }
      } finally {
        enough.set(true);
        threads.shutdown();
      }
      assertThat(Verification.of(database).disagreement()).isNull();
    }
  }

  private static void write(Database database, AtomicInteger codes, AtomicBoolean enough) {
    while (!enough.get()) {
      database.write(ACT, tx -> addAndRename(tx, codes));
    }
  }

  private static Void addAndRename(Tx tx, AtomicInteger codes) {
    SiteRecord site = add(tx, codes);
    site.setName("Renamed");
    tx.update(site);
    return null;
  }

  private static SiteRecord add(Tx tx, AtomicInteger codes) {
    SiteRecord site = tx.row(SITE);
    site.setCode("S" + codes.incrementAndGet());
    site.setName("Site");
    site.setZone("UTC");
    return tx.insert(site);
  }

  @ParameterizedTest
  @EnumSource(Engine.class)
  void aChangeOfManyPartsIsWhole(Engine engine) {
    try (Database database = engine.open(new TestClock("2026-03-01T10:15:30Z"))) {
      AtomicInteger codes = new AtomicInteger();
      database.write(
          ACT,
          tx -> {
            IntStream.range(0, 4_500).forEach(i -> add(tx, codes));
            return null;
          });
      Verdict verdict = Verification.of(database);
      assertThat(verdict.disagreement()).isNull();
      assertThat(verdict.entries()).isEqualTo(3);
      assertThat(verdict.changes()).isEqualTo(1);
      assertThat(verdict.rows()).isEqualTo(4_500);
    }
  }
}
