package loopwright.matching.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Set;
import loopwright.matching.ChannelView;
import loopwright.matching.Fact;
import loopwright.matching.Families;
import loopwright.matching.FamilyView;
import loopwright.matching.LoopView;
import loopwright.matching.NominalLine;
import loopwright.matching.Output;
import loopwright.matching.Range;
import loopwright.matching.Rule;
import loopwright.matching.Verdict;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * By hand: 200 mV/mil, linear from 10 to 90 mil and −2 to −18 V. Zero at −10 V, danger at ±28 mil
 * (a published training text, seen): 28 · 0.2 = 5.6 V, so −4.4 and −15.6 V, inside −18 … −2 V and
 * inside OK limits of −19 … −1.3 V (from memory).
 */
class AxialDangerTest extends RuleContract {
  static final NominalLine LINE = new NominalLine(254, 2286, -2, 200 / 25.4);
  static final FamilyView FAMILY =
      FamilyView.of("A8").line(LINE).scaleFactor(ScaleFactor.millivoltsPerMil("200")).build();

  @Override
  Rule rule() {
    return new AxialDanger();
  }

  private static LoopView.Builder loop(ChannelView... channels) {
    return Loops.ofFamily("A8", "1.0", "4.0", "5.0")
        .families(Families.of(List.of(FAMILY), List.of()))
        .holding(Set.of(Fact.CHANNELS))
        .place(Places.axial(channels));
  }

  private static ChannelView channel(
      String low, String high, Range ok, String zero, String direction) {
    return new ChannelView(
        "R1/4/1",
        ScaleFactor.millivoltsPerMil("200"),
        "",
        Range.of("-40", "40"),
        Places.range(low, high),
        Unit.MIL,
        ok,
        Places.number(zero),
        direction.isEmpty() ? null : direction.equals("toward"));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = ';',
      textBlock =
          """
          as the example has it;           -28; 28; -19;   -1.3;  -10;  toward; MATCHES
          the other way round;             -28; 28; -19;   -1.3;  -10;  away;   MATCHES
          exactly on the end of the range; -40; 40; -19;   -1.3;  -10;  toward; MATCHES
          beyond the range, near side;     -28; 41; -19;   -1.3;  -10;  toward; REFUSED
          beyond the range, far side;      -41; 28; -19;   -1.3;  -10;  toward; REFUSED
          zero set too near the end;       -28; 28; -19;   -1.3;  -5;   toward; REFUSED
          sign turns the near side;        -10; 41; -19;   -1.3;  -10;  away;   REFUSED
          OK limit inside danger;          -28; 28; -15.5; -1.3;  -10;  toward; REFUSED
          OK limit on danger;              -28; 28; -15.6; -1.3;  -10;  toward; REFUSED
          one danger position only;        -28; '';  -19;   -1.3;  -10;  toward; ATTENTION
          one OK limit only;               -28; 28; -19;   '';    -10;  toward; ATTENTION
          one position, and that is bad;   -41; '';  -19;   -1.3;  -10;  toward; REFUSED
          zero voltage is not known;       -28; 28; -19;   -1.3;  '';   toward; UNKNOWN
          direction is not known;          -28; 28; -19;   -1.3;  -10;  '';     UNKNOWN
          """)
  void truthTable(
      String name,
      String low,
      String high,
      String okLow,
      String okHigh,
      String zero,
      String direction,
      Verdict verdict) {
    ChannelView channel = channel(low, high, Places.range(okLow, okHigh), zero, direction);
    assertThat(rule().judge(loop(channel).build()).verdict()).isEqualTo(verdict);
  }

  @Test
  void theExampleByHand() {
    AxialScale scale =
        AxialScale.of(channel("-28", "28", Range.of("-19", "-1.3"), "-10", "toward")).orElseThrow();
    assertThat(scale.voltsAt(28 * 25.4)).isCloseTo(-4.4, within(1e-9));
    assertThat(scale.voltsAt(-28 * 25.4)).isCloseTo(-15.6, within(1e-9));
    assertThat(LINE.gapAt(-15.6)).isCloseTo(78 * 25.4, within(1e-6));
    assertThat(LINE.endVolts()).isCloseTo(-18, within(1e-9));
  }

  @Test
  void saysWhereTheDangerPositionFalls() {
    ChannelView channel = channel("-28", "28", Range.of("-19", "-1.3"), "-5", "toward");
    assertThat(rule().judge(loop(channel).build()).message())
        .isEqualTo(
            "Danger at 28 mil on channel R1/4/1 is shown at 0.6 V, outside the linear range −2 V to"
                + " −18 V.");
  }

  @Test
  void aFamilyWithoutALineIsUnknown() {
    LoopView loop =
        loop(channel("-28", "28", Range.of("-19", "-1.3"), "-10", "toward"))
            .families(Families.of(List.of(FamilyView.of("A8").build()), List.of()))
            .build();
    assertThat(rule().judge(loop).verdict()).isEqualTo(Verdict.UNKNOWN);
  }

  @Test
  void judgesNeitherVibrationNorCurrentNorWithoutChannels() {
    ChannelView channel = channel("-28", "28", Range.of("-19", "-1.3"), "-10", "toward");
    FamilyView current = FamilyView.of("A8").line(LINE).output(Output.CURRENT).build();
    assertThat(rule().judge(loop().place(Places.radial(channel)).build()).verdict())
        .isEqualTo(Verdict.NOT_JUDGED);
    assertThat(
            rule()
                .judge(loop(channel).families(Families.of(List.of(current), List.of())).build())
                .verdict())
        .isEqualTo(Verdict.NOT_JUDGED);
    assertThat(rule().judge(loop(channel).holding(Set.of()).build()).verdict())
        .isEqualTo(Verdict.NOT_JUDGED);
    assertThat(rule().judge(loop().build()).verdict()).isEqualTo(Verdict.NOT_JUDGED);
  }

  @Test
  void neverBlocksAssembly() {
    assertThat(rule().blocksAssembly()).isFalse();
    assertThat(rule().blocksReturnToService()).isTrue();
  }
}
