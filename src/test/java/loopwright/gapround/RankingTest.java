package loopwright.gapround;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import loopwright.cause.TappingPoint;
import loopwright.fieldcheck.GapReading;
import loopwright.fieldcheck.MachineState;
import loopwright.fieldcheck.Warmth;
import loopwright.units.Reported;
import loopwright.units.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a pair moved together, and who comes first. */
class RankingTest {

  private static GapReading reading(String volts, String at) {
    return new GapReading(
        1,
        1,
        Instant.parse(at),
        "T. Echnician",
        Reported.read(volts, Unit.VOLT).orElseThrow(),
        TappingPoint.RACK,
        MachineState.REST,
        Warmth.NOT_RECORDED,
        "",
        "",
        "imported",
        1);
  }

  private static Compared loop(String tag, String pair, String before, String now) {
    return new Compared(
        tag,
        pair,
        reading(now, "2026-03-01T08:00:00Z"),
        before.isEmpty() ? Optional.empty() : Optional.of(reading(before, "2026-02-01T08:00:00Z")));
  }

  /** The smaller one where both go to the same side; nothing where they part. */
  @ParameterizedTest
  @CsvSource({"1.0, 1.0, 1.0", "-1.5, -1.0, -1.0", "-2.0, 0, 0", "0.8, -0.8, 0", "0.3, 0.9, 0.3"})
  void whatAPairMovedTogether(double a, double b, double together) {
    assertThat(Ranking.together(a, b)).isCloseTo(together, within(1e-12));
  }

  /**
   * VX −10 → −8.5 and VY −10 → −9.1 (pair): together +0.9, own 0.6 and 0; A1 alone −10 → −9.2: own
   * 0.8; dead at −0.4 V comes first; a new point has nothing to compare.
   */
  @Test
  void worstFirst() {
    List<Ranking.Ranked> ranked =
        Ranking.of(
            List.of(
                loop("VX", "VY", "-10.0", "-8.5"),
                loop("VY", "VX", "-10.0", "-9.1"),
                loop("A1", "", "-10.0", "-9.2"),
                loop("DEAD", "", "-10.0", "-0.4"),
                loop("NEW", "", "", "-9.0"),
                loop("STILL", "", "-10.0", "-9.9")));
    assertThat(ranked)
        .extracting(each -> each.loop().tag())
        .containsExactly("DEAD", "A1", "VX", "STILL", "NEW", "VY");
    assertThat(ranked)
        .filteredOn(Ranking.Ranked::isWorthAVisit)
        .extracting(each -> each.loop().tag())
        .containsExactly("DEAD", "A1", "VX");
    Ranking.Ranked vx = ranked.get(2);
    assertThat(vx.common().orElseThrow()).isCloseTo(0.9, within(1e-9));
    assertThat(vx.own().orElseThrow()).isCloseTo(0.6, within(1e-9));
    assertThat(RoundWords.of(vx))
        .isEqualTo(
            "−8.50 V at rest, was −10.00 V: +1.50 V, as if nearer, of which the pair moved together"
                + " +0.90 V.");
    assertThat(RoundWords.of(ranked.get(4))).endsWith("Nothing before it compares.");
  }
}
