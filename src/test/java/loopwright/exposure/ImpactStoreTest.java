package loopwright.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.standard.Standards;
import loopwright.standard.Trace;
import loopwright.testing.Engine;
import loopwright.testing.FullWorld;
import loopwright.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.AfterParameterizedClassInvocation;
import org.junit.jupiter.params.BeforeParameterizedClassInvocation;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Reviews that a standard's error opens, and what it came by, on both engines. */
@ParameterizedClass
@EnumSource(Engine.class)
class ImpactStoreTest {
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

  private int open(List<SecondThought> thoughts) {
    return database.write(ACT, tx -> new ImpactReviews().open(tx, 2, thoughts));
  }

  @Test
  void aRecordIsReviewedOnceForOneStandard() {
    SecondThought before = new SecondThought(1, 1, List.of("again"));
    SecondThought fresh = new SecondThought(2, 1, List.of("DVM-1 was wrong.", "It flips."));
    assertThat(open(List.of(before, fresh))).isEqualTo(1);
    assertThat(open(List.of(before, fresh))).isZero();
    List<ImpactReview> all =
        database.read(sql -> new ImpactReviews().before(sql, Long.MAX_VALUE, false, 9));
    assertThat(all).extracting(ImpactReview::standard).containsExactly("DVM-1", "DVM-1", null);
    assertThat(all.get(0).told()).containsExactly("DVM-1 was wrong.", "It flips.");
    assertThat(all.get(2).told()).isEmpty();
  }

  @Test
  void tracesNameTheCertificateInForce() {
    List<Trace> traces = database.read(sql -> new Standards().traces(sql));
    assertThat(traces)
        .extracting(Trace::isCheck, Trace::standard, Trace::reference, Trace::referenceCertificate)
        .containsExactly(tuple(false, 1L, 2L, 2L), tuple(true, 1L, 2L, 2L));
  }
}
