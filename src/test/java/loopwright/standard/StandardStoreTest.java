package loopwright.standard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import loopwright.db.Act;
import loopwright.db.Database;
import loopwright.db.Tx;
import loopwright.problem.Refused;
import loopwright.testing.Engine;
import loopwright.testing.TestClock;
import loopwright.units.Reported;
import loopwright.units.Unit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Reference standards on both engines. */
@ParameterizedClass
@EnumSource(Engine.class)
class StandardStoreTest {
  private static final LocalDate TODAY = LocalDate.parse("2026-03-01");

  @Parameter Engine engine;

  private final Standards standards = new Standards();
  private Database database;

  @BeforeEach
  void open() {
    database = engine.open(new TestClock("2026-03-01T10:00:00Z"));
  }

  @AfterEach
  void close() {
    database.close();
  }

  private static Reported mil(String typed) {
    return Reported.read(typed, Unit.MIL).orElseThrow();
  }

  private static CertifiedRange range(int number, String low, String high) {
    return new CertifiedRange(
        number,
        mil(low),
        mil(high),
        mil("-0.010"),
        mil("0,040"),
        Optional.of(CertifiedRange.Percent.read("0.10")),
        Optional.empty());
  }

  private static Certificate certificate(String number, String issued, CertifiedRange... ranges) {
    LocalDate day = LocalDate.parse(issued);
    return new Certificate(
        0, number, "Lab", day, day.plusYears(1), new BigDecimal("2.00"), List.of(ranges), "");
  }

  private Standard kept(Certificate... certificates) {
    Standard fresh =
        new Standard(0, "Mic-1", StandardKind.MICROMETER, "A", "B", "07", "", List.of(), List.of());
    database.write(Act.ofProgram("test", "test"), tx -> standards.add(tx, fresh));
    for (Certificate certificate : certificates) {
      database.write(
          Act.ofProgram("test", "test"),
          tx -> standards.add(tx, standards.coded(tx.sql(), "MIC-1"), certificate, TODAY));
    }
    return database.read(sql -> standards.coded(sql, "mic-1"));
  }

  @Test
  void whatIsTypedComesBackAsTyped() {
    Standard standard =
        kept(
            certificate("K-1", "2025-01-05", range(1, "0", "50.0"), range(2, "50.0", "100")),
            certificate("K-2", "2026-01-05", range(1, "0", "100")));
    assertThat(standard.code()).isEqualTo("Mic-1");
    assertThat(standard.newest().orElseThrow().number()).isEqualTo("K-2");
    Certificate then = standard.certificateOf(LocalDate.parse("2026-01-04")).orElseThrow();
    assertThat(then.number()).isEqualTo("K-1");
    assertThat(then.coverageFactor()).isEqualByComparingTo("2");
    assertThat(then.ranges()).hasSize(2);
    CertifiedRange first = then.ranges().get(0);
    assertThat(first.ends()).isEqualTo("0 to 50.0 mil");
    assertThat(first.correction()).hasToString("-0.010 mil");
    assertThat(first.uncertainty()).hasToString("0,040 mil");
    assertThat(first.scalePercent().orElseThrow().typed()).isEqualTo("0.10");
    assertThat(first.resolution()).isEmpty();
    assertThat(standard.certificateOf(LocalDate.parse("2025-01-04"))).isEmpty();
  }

  @Test
  void usesNameTheCertificateTheyWereMadeUnder() {
    Standard standard =
        kept(
            certificate("K-1", "2025-01-05", range(1, "0", "100")),
            certificate("K-2", "2026-01-05", range(1, "0", "100")));
    long first = standard.certificates().get(1).id();
    List<StandardUsed> used = database.read(sql -> standards.used(sql, List.of(first)));
    assertThat(used).hasSize(1);
    assertThat(used.get(0).certificate().number()).isEqualTo("K-1");
    List<StandardUsed> none = database.read(sql -> standards.used(sql, List.of()));
    assertThat(none).isEmpty();
  }

  @Test
  void aDayIsReadFromEventsUpToIt() {
    Standard standard = kept();
    database.write(
        Act.ofProgram("test", "test"),
        tx -> {
          event(tx, standard, StandardEvent.Kind.OUT_OF_USE, "2026-02-10");
          event(tx, standard, StandardEvent.Kind.BACK_IN_USE, "2026-02-20");
          return null;
        });
    Standard now = database.read(sql -> standards.coded(sql, "Mic-1"));
    assertThat(now.inUse()).isTrue();
    assertThat(now.unfitOn(LocalDate.parse("2026-02-09"))).isFalse();
    assertThat(now.unfitOn(LocalDate.parse("2026-02-15"))).isTrue();
  }

  private void event(Tx tx, Standard of, StandardEvent.Kind kind, String on) {
    standards.add(tx, of, new StandardEvent(kind, LocalDate.parse(on), "seen", ""), TODAY);
  }

  @Test
  void overlappingRangesAndMissingOnesAreRefused() {
    assertThatThrownBy(
            () -> certificate("K", "2026-01-05", range(1, "0", "60"), range(2, "50", "90")))
        .isInstanceOf(Refused.class)
        .hasMessageContaining("Ranges 1 and 2 overlap");
    assertThatThrownBy(() -> kept(certificate("K", "2026-01-05")))
        .isInstanceOf(Refused.class)
        .hasMessageContaining("at least one range");
  }
}
