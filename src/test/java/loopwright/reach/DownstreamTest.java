package loopwright.reach;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import loopwright.standard.Certificate;
import loopwright.standard.Standard;
import loopwright.standard.StandardEvent;
import loopwright.standard.StandardKind;
import loopwright.standard.Trace;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The walk to standards that rest on one found wrong. Standard n has certificate 10·n, of
 * 2026-01-01, and 10·n + 1, of 2026-03-01.
 */
class DownstreamTest {
  private static final LocalDate FROM = LocalDate.parse("2026-02-01");
  private static final LocalDate UNTIL = LocalDate.parse("2026-04-01");

  private static Standard standard(long id, StandardKind kind, StandardEvent... events) {
    List<Certificate> certificates =
        List.of(certificate(10 * id + 1, "2026-03-01"), certificate(10 * id, "2026-01-01"));
    return new Standard(id, "S" + id, kind, "A", "B", "C", "", certificates, Arrays.asList(events));
  }

  private static Certificate certificate(long id, String issued) {
    LocalDate on = LocalDate.parse(issued);
    return new Certificate(
        id, "K" + id, "shop", on, on.plusYears(1), BigDecimal.valueOf(2), List.of(), "");
  }

  private static Trace certified(long standard, long certificate, String on, long reference) {
    LocalDate day = LocalDate.parse(on);
    long force = day.isBefore(LocalDate.parse("2026-03-01")) ? 10 * reference : 10 * reference + 1;
    return new Trace(standard, certificate, day, reference, force);
  }

  private static Trace checked(long standard, String on, long reference) {
    Trace as = certified(standard, 0, on, reference);
    return new Trace(standard, null, as.on(), reference, as.referenceCertificate());
  }

  private static String told(Affected a) {
    return a.pathInWords() + (a.carries() ? "" : " !");
  }

  private static List<String> walk(Trace... traces) {
    return walk(List.of(), traces);
  }

  private static List<String> walk(List<Standard> others, Trace... traces) {
    List<Standard> all = new ArrayList<>(others);
    for (long id = 1; id <= 5; id++) {
      long number = id;
      if (all.stream().noneMatch(each -> each.id() == number)) {
        all.add(standard(id, StandardKind.VOLTMETER));
      }
    }
    Standard found = all.stream().filter(each -> each.id() == 1).findFirst().orElseThrow();
    return Downstream.of(found, FROM, UNTIL, all, Arrays.asList(traces)).stream()
        .map(DownstreamTest::told)
        .collect(Collectors.toList());
  }

  @ParameterizedTest(name = "calibrated on {0}: reached {1}")
  @CsvSource({"2026-01-31, false", "2026-02-01, true", "2026-03-31, true", "2026-04-01, false"})
  void onlyWhatRestsOnItInThatTimeIsReached(String on, boolean reached) {
    assertThat(walk(certified(2, 20, on, 1))).hasSize(reached ? 2 : 1);
  }

  @Test
  void itGoesOnThroughTheVeryCertificateWhenever() {
    assertThat(
            walk(
                certified(2, 21, "2026-03-01", 1),
                // S3 used S2 on the certificate that came of it, long after the time asked
                certified(3, 30, "2026-06-01", 2),
                // S4 used S2 on its older certificate
                certified(4, 40, "2026-02-15", 2)))
        .containsExactly(
            "S1", "S1 → S2 (certificate K21)", "S1 → S2 (certificate K21) → S3 (certificate K30)");
  }

  @Test
  void aCheckReachesButCarriesNoNumbersAndEndsWithTheNextOne() {
    assertThat(walk(checked(2, "2026-02-10", 1), certified(3, 30, "2026-02-20", 2)))
        .containsExactly(
            "S1",
            "S1 → S2 (checked on 2026-02-10) !",
            "S1 → S2 (checked on 2026-02-10) → S3 (certificate K30) !");
    // S2 has a new certificate since 2026-03-01: what was compared with it later is not touched
    assertThat(walk(checked(2, "2026-02-10", 1), certified(3, 31, "2026-03-05", 2))).hasSize(2);
  }

  @Test
  void anotherQuantityIsReachedWithoutNumbers() {
    List<Standard> micrometer = List.of(standard(2, StandardKind.MICROMETER));
    assertThat(walk(micrometer, certified(2, 20, "2026-02-10", 1)))
        .containsExactly("S1", "S1 → S2 (certificate K20) !");
    List<Standard> blocks = List.of(standard(1, StandardKind.OTHER));
    assertThat(walk(blocks, certified(2, 20, "2026-02-10", 1)))
        .containsExactly("S1 !", "S1 → S2 (certificate K20) !");
  }

  @Test
  void aRingEndsAndAWayThatCarriesGoesBeforeOneThatDoesNot() {
    assertThat(walk(certified(2, 20, "2026-02-10", 1), certified(1, 11, "2026-03-01", 2)))
        .hasSize(2);
    List<String> both =
        walk(
            checked(2, "2026-02-05", 1),
            certified(3, 30, "2026-02-20", 2),
            certified(4, 40, "2026-02-10", 1),
            certified(3, 30, "2026-02-20", 4));
    assertThat(both)
        .contains("S1 → S4 (certificate K40) → S3 (certificate K30)")
        .filteredOn(path -> path.endsWith("S3 (certificate K30)"))
        .hasSize(1);
  }

  @Test
  void whyNothingCanBeWorkedOutIsSaid() {
    List<Standard> all =
        List.of(
            standard(1, StandardKind.VOLTMETER),
            standard(2, StandardKind.MICROMETER),
            standard(3, StandardKind.VOLTMETER));
    List<Affected> reached =
        Downstream.of(
            all.get(0),
            FROM,
            UNTIL,
            all,
            List.of(certified(2, 20, "2026-02-10", 1), checked(3, "2026-02-11", 1)));
    assertThat(whyNot(reached, 2)).contains("S1 is a voltmeter and S2 a spindle micrometer");
    assertThat(whyNot(reached, 3)).contains("only checked against S1");
    assertThat(reached.get(2).until()).isEqualTo("2026-03-01");
  }

  private static @Nullable String whyNot(List<Affected> reached, long standard) {
    return reached.stream()
        .filter(a -> a.standard().id() == standard)
        .map(Affected::whyNot)
        .findFirst()
        .orElse(null);
  }
}
