package loopwright.protection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import loopwright.protection.ActsAt.Timing;
import loopwright.protection.ChannelEffect.Reading;
import loopwright.units.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where set points act: examples worked by hand, the working beside them. */
class ChannelEffectTest {
  private static final double EXACT = 1e-6;
  private static final GapSpan STRAIGHT = new GapSpan(250, 2250);

  private static SetPoint at(String name, String level) {
    return new SetPoint(name, new BigDecimal(level), Unit.MICROMETRE);
  }

  private static double acts(List<ActsAt> acts, int i) {
    return acts.get(i).acts().orElseThrow();
  }

  /**
   * A line: acts = A · S_c/S_t.
   *
   * <pre>
   * 100 · 200/170 = 117.647;  150 · 200/170 = 176.471     5.5 m on a 5 m driver, re-gapped
   * 100 · 200/177 = 112.994                                5.5 m, probe not moved
   * 100 · 200/218 =  91.743                                too short: early
   * 100 · 200/200 = 100                                    right
   * 100 · 203.2/200 = 101.6                                monitor told 8 mV/µm
   * </pre>
   */
  @ParameterizedTest
  @CsvSource({
    "100, 200, 170, 117.647059, LATE",
    "150, 200, 170, 176.470588, LATE",
    "100, 200, 177, 112.994350, LATE",
    "100, 200, 218, 91.743119, EARLY",
    "100, 200, 200, 100, AS_MEANT",
    "100, 203.2, 200, 101.6, LATE"
  })
  void vibrationOnALine(String level, double told, double real, double acts, Timing timing) {
    OutputCurve line = OutputCurve.line(STRAIGHT, -2, real / 25.4);
    VibrationEffect effect =
        VibrationEffect.of(line, 1250, told / 25.4, List.of(at("alert", level)));
    assertThat(acts(effect.setPoints(), 0)).isCloseTo(acts, within(1e-5));
    assertThat(effect.setPoints().get(0).timing()).isEqualTo(timing);
    assertThat(effect.share()).isCloseTo(real / told, within(EXACT));
  }

  /**
   * A curve that flattens: V = −8.5, −9.2, −9.9, −10.4, −10.8 at 1070, 1170, 1270, 1370, 1470 µm,
   * S_c = 8 mV/µm, probe at 1270.
   *
   * <pre>
   * 200 µm pk-pk swings from 1170 to 1370: (−9.2 + 10.4) V = 1.2 V, shown 1200/8 = 150 µm
   * 400 µm pk-pk swings from 1070 to 1470: (−8.5 + 10.8) V = 2.3 V, shown 2300/8 = 287.5 µm
   * slope at 1270: harmonic mean of 7 and 5 = 2·7·5/12 = 5.8333 mV/µm;
   * by it alone 150 µm would act at 150 · 8/5.8333 = 205.7 µm
   * </pre>
   */
  @Test
  void largeVibrationFollowsTheCurveNotItsSlope() {
    double[] gaps = {1070, 1170, 1270, 1370, 1470};
    double[] volts = {-8.5, -9.2, -9.9, -10.4, -10.8};
    OutputCurve curve = OutputCurve.through(gaps, volts, Optional.of(new GapSpan(1070, 1370)));
    VibrationEffect effect =
        VibrationEffect.of(
            curve, 1270, 8, List.of(at("alert", "150"), at("danger", "287.5"), at("trip", "300")));
    assertThat(acts(effect.setPoints(), 0)).isCloseTo(200, within(EXACT));
    assertThat(acts(effect.setPoints(), 1)).isCloseTo(400, within(EXACT));
    assertThat(effect.sensitivity()).isCloseTo(5.8333333, within(EXACT));
    // 400 µm is all that the readings answer for; shown then 287.5, so 300 is never seen
    assertThat(effect.setPoints().get(2).timing()).isEqualTo(Timing.NOT_WITHIN_THE_CURVE);
    assertThat(effect.setPoints().get(2).reach()).isEqualTo(400);
    // straight to 1370: 2 · (1370 − 1270) = 200
    assertThat(effect.clipsAt()).hasValue(200);
  }

  /**
   * Clipping: twice the distance to the nearer end.
   *
   * <pre>
   * 1000 in 250 … 2250: 2 · 750 = 1500;  1800: 2 · 450 = 900;  100: outside, 0
   * </pre>
   */
  @ParameterizedTest
  @CsvSource({"1000, 1500", "1800, 900", "1250, 2000", "100, 0"})
  void clipping(double gap, double most) {
    OutputCurve curve =
        OutputCurve.through(
            new double[] {50, 2500}, new double[] {-0.4, -20}, Optional.of(STRAIGHT));
    assertThat(VibrationEffect.of(curve, gap, 8, List.of()).clipsAt()).hasValue(most);
  }

  /**
   * A position on a line: S_c = 8, S_t = 7 mV/µm, V_zero = −10 V, the real curve gives −9.3 V at
   * the gap where −10 V was set (1250 µm), so the offset is 0.7 V.
   *
   * <pre>
   * toward positive, s = +1: at zero shown 0.7/8 = 87.5 µm
   *   +500: (4.0 − 0.7)/7 = 471.43 early      −500: (−4.0 − 0.7)/7 = −671.43 late
   * away positive, s = −1: at zero shown −87.5 µm
   *   +500: (4.0 + 0.7)/7 = 671.43 late       −500: (−4.0 + 0.7)/7 = −471.43 early
   * </pre>
   */
  @ParameterizedTest
  @CsvSource({
    "1, 87.5, 471.428571, EARLY, -671.428571, LATE",
    "-1, -87.5, 671.428571, LATE, -471.428571, EARLY"
  })
  void anOffsetMakesOneSideEarlyAndTheOtherLate(
      int s, double atZero, double high, Timing highIs, double low, Timing lowIs) {
    OutputCurve now = OutputCurve.line(new GapSpan(250, 2250), -9.3 + 7, 7);
    OutputCurve before = OutputCurve.line(new GapSpan(250, 2250), -10 + 8, 8);
    ChannelEffect effect =
        ChannelEffect.of(
            new ChannelEffect.Loop(Reading.POSITION, now, Optional.of(before), 1250, Ramp.NONE),
            new MonitorTold(
                "R1",
                OptionalDouble.of(8),
                List.of(at("danger", "500"), at("danger", "-500")),
                List.of(-16.75),
                OptionalDouble.of(-10),
                s));
    assertThat(effect.position().orElseThrow().shownAtZero()).isCloseTo(atZero, within(EXACT));
    assertThat(acts(effect.setPoints(), 0)).isCloseTo(high, within(1e-5));
    assertThat(effect.setPoints().get(0).timing()).isEqualTo(highIs);
    assertThat(acts(effect.setPoints(), 1)).isCloseTo(low, within(1e-5));
    assertThat(effect.setPoints().get(1).timing()).isEqualTo(lowIs);
    // OK −16.75 V: before 1250 + 6.75/8 = 2093.75 µm; now 1250 + (16.75 − 9.3)/7 = 2314.29, which
    // lies beyond the readings
    assertThat(effect.okGaps().get(0).before().orElseThrow()).isCloseTo(2093.75, within(EXACT));
    assertThat(effect.okGaps().get(0).now()).isEmpty();
  }

  /**
   * Differential expansion on a ramp of 30° (sin θ = 0.5), toward positive: the loop was 4 mV/µm
   * and −10 V at 2500 µm, now gives 3.6 mV/µm and −9.64 V there, an offset of 0.36 V. Levels are
   * movements of the shaft; 1000 µm of it are 500 µm of gap.
   *
   * <pre>
   * monitor told 4 mV/µm and the angle, or 2 mV/µm: it counts S_m = 4 · 0.5 = 2 mV for each µm
   *   at zero shown 360/2 = 180 µm
   *   +3000: V = −10 + 6 = −4; gap = 2500 − (9.64 − 4)/3.6 · 1000 = 933.33; (2500 − 933.33)/0.5 = 3133.33 late
   *   −3000: V = −16; gap = 2500 + (16 − 9.64)/3.6 · 1000 = 4266.67; −1766.67/0.5 = −3533.33 late
   *   by the line: (A · S_m − 0.36 V)/(S_t · sin θ) = (6000 − 360)/1.8 = 3133.33; (−6000 − 360)/1.8 = −3533.33
   * in front of a collar, told 4: at zero 90 µm; +1500: (6000 − 360)/3.6 = 1566.67
   * </pre>
   */
  @ParameterizedTest
  @CsvSource({
    "30, 4, 180, 3000, 3133.333333, -3533.333333, false",
    "30, 2, 180, 3000, 3133.333333, -3533.333333, true",
    "90, 4, 90, 1500, 1566.666667, -1766.666667, false"
  })
  void onARampLevelsAreWorthLessGap(
      double degrees,
      double told,
      double atZero,
      String level,
      double high,
      double low,
      boolean inScale) {
    OutputCurve now = OutputCurve.line(new GapSpan(500, 4500), -9.64 + 7.2, 3.6);
    OutputCurve before = OutputCurve.line(new GapSpan(500, 4500), -10 + 8, 4);
    ChannelEffect effect =
        ChannelEffect.of(
            new ChannelEffect.Loop(
                Reading.POSITION, now, Optional.of(before), 2500, new Ramp(degrees)),
            new MonitorTold(
                "R1",
                OptionalDouble.of(told),
                List.of(at("danger", level), at("danger", "-" + level)),
                List.of(),
                OptionalDouble.of(-10),
                1));
    assertThat(effect.position().orElseThrow().shownAtZero()).isCloseTo(atZero, within(EXACT));
    assertThat(effect.position().orElseThrow().rampInScale()).isEqualTo(inScale);
    assertThat(acts(effect.setPoints(), 0)).isCloseTo(high, within(1e-5));
    assertThat(acts(effect.setPoints(), 1)).isCloseTo(low, within(1e-5));
    // readings end at 500 and 4500: 2000 µm of gap to either side
    assertThat(effect.setPoints().get(0).reach())
        .isCloseTo(degrees == 30 ? 4000 : 2000, within(EXACT));
    String words = String.join(" ", new EffectWords(true).of(effect));
    if (degrees == 30) {
      assertThat(words)
          .contains("On the ramp of 30° the gap changes by 0.500 (its sine)")
          .contains(inScale ? "with the sine in it" : "the angle told beside it")
          .contains(
              "Danger meant for 3000 µm (118.1 mil) acts at 3133 µm (123.4 mil): late by 4 %.");
    } else {
      assertThat(words).doesNotContain("ramp");
    }
  }

  /** −2.75 V: before 250 + 0.75/8 = 343.75 µm; now 250 + (2.75 − 2.3)/7 = 314.29 µm. */
  @Test
  void okLimitsKeepTheirVoltsAndStandForOtherGaps() {
    OkGap ok =
        OkGap.of(
                List.of(-2.75),
                OutputCurve.line(STRAIGHT, -2.3, 7),
                Optional.of(OutputCurve.line(STRAIGHT, -2, 8)))
            .get(0);
    assertThat(ok.before().orElseThrow()).isCloseTo(343.75, within(EXACT));
    assertThat(ok.now().orElseThrow()).isCloseTo(314.285714, within(1e-5));
  }

  @Test
  void inPlainWordsAndBothUnits() {
    OutputCurve line = OutputCurve.line(STRAIGHT, -2, 170 / 25.4);
    ChannelEffect effect =
        ChannelEffect.of(
            new ChannelEffect.Loop(Reading.VIBRATION, line, Optional.empty(), 1250, Ramp.NONE),
            new MonitorTold(
                "R1",
                OptionalDouble.of(200 / 25.4),
                List.of(at("alert", "100")),
                List.of(),
                OptionalDouble.empty(),
                0));
    assertThat(new EffectWords(true).of(effect))
        .contains(
            "Alert meant for 100 µm pk-pk (3.9 mil) acts at 118 µm (4.6 mil): late by 18 %.",
            "Of a small vibration the monitor shows 85 %.");
    assertThat(new EffectWords(false).of(effect).get(0)).contains("acts at 4.6 mil (118 µm)");
  }

  @Test
  void whatIsNotRecordedIsNamedAndNothingIsGuessed() {
    OutputCurve line = OutputCurve.line(STRAIGHT, -2, 8);
    MonitorTold nothing =
        new MonitorTold(
            "R1", OptionalDouble.empty(), List.of(), List.of(), OptionalDouble.empty(), 0);
    ChannelEffect effect =
        ChannelEffect.of(
            new ChannelEffect.Loop(Reading.POSITION, line, Optional.empty(), 1250, Ramp.NONE),
            nothing);
    assertThat(effect.missing()).containsExactly("set points", "scale factor");
    assertThat(effect.position()).isEmpty();
  }

  /** Saturated beyond 2000 µm and dead below 500: only what falls about the gap counts. */
  @Test
  void saturatedEndsAreLeftOut() {
    double[] gaps = {250, 500, 1000, 1500, 2000, 2250};
    double[] volts = {-1, -1, -5, -9, -13, -13};
    OutputCurve curve = OutputCurve.falling(gaps, volts, 1250, Optional.empty()).orElseThrow();
    assertThat(curve.known()).isEqualTo(new GapSpan(500, 2000));
    assertThat(OutputCurve.falling(gaps, volts, 300, Optional.empty())).isEmpty();
    assertThat(OutputCurve.falling(gaps, volts, 9000, Optional.empty())).isEmpty();
  }
}
