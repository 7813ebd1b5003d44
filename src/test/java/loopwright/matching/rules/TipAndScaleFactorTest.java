package loopwright.matching.rules;

import static loopwright.matching.rules.Loops.FAMILIES;
import static loopwright.matching.rules.Loops.cable;
import static loopwright.matching.rules.Loops.driver;
import static loopwright.matching.rules.Loops.loop;
import static loopwright.matching.rules.Loops.probe;
import static loopwright.matching.rules.Loops.slot;
import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.EnumSet;
import java.util.Set;
import loopwright.matching.Fact;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.PartView;
import loopwright.matching.Rule;
import loopwright.matching.Verdict;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TipAndScaleFactorTest extends RuleContract {
  private static final Set<Fact> TIPS = EnumSet.of(Fact.PROBE_TIP, Fact.DRIVER_TIP);
  private static final Set<Fact> SCALES =
      EnumSet.of(Fact.PROBE_SCALE_FACTOR, Fact.DRIVER_SCALE_FACTOR);

  @Override
  Rule rule() {
    return new TipAndScaleFactor();
  }

  private static LoopView.Builder of(PartView.Builder probe, PartView.Builder driver) {
    return loop(probe, slot(cable("4.0")), driver);
  }

  private static @Nullable BigDecimal tip(@Nullable String mm) {
    return mm == null ? null : new BigDecimal(mm);
  }

  private static @Nullable ScaleFactor scale(@Nullable String text) {
    if (text == null) {
      return null;
    }
    String[] parts = text.split(" ");
    return new ScaleFactor(new BigDecimal(parts[0]), Unit.named(parts[1]).orElseThrow());
  }

  @ParameterizedTest(name = "tips {0} and {1}")
  @CsvSource({
    "8, 8, MATCHES, 'Tip 8 mm at both ends.'",
    "8, 8.0, MATCHES, 'Tip 8 mm at both ends.'",
    "5, 8, REFUSED, 'The probe has a 5 mm tip, the driver is made for 8 mm.'",
    ", 8, UNKNOWN, 'The tip size of the probe is not recorded.'",
    "8, , UNKNOWN, 'The tip size of the driver is not recorded.'",
    ", , UNKNOWN, 'The tip size of the probe and driver is not recorded.'",
  })
  void judgesTips(
      @Nullable String probe, @Nullable String driver, Verdict verdict, String message) {
    LoopView loop =
        of(probe("1.0").tipMillimetres(tip(probe)), driver("5.0").tipMillimetres(tip(driver)))
            .holding(TIPS)
            .build();
    Finding finding = rule().judge(loop);
    assertThat(finding.verdict()).isEqualTo(verdict);
    assertThat(finding.message()).isEqualTo(message);
  }

  /** 200 mV/mil = 200/25.4 mV/µm exactly; 7.87 mV/µm is 0.05 % less, 8 mV/µm 1.6 % more. */
  @ParameterizedTest(name = "scale factors {0} and {1}")
  @CsvSource({
    "200 mV/mil, 200.0 mV/mil, MATCHES",
    "8 mV/um, 203.2 mV/mil, MATCHES",
    "7.87 mV/um, 200 mV/mil, ATTENTION",
    "8 mV/um, 200 mV/mil, REFUSED",
    "100 mV/mil, 200 mV/mil, REFUSED",
    ", 200 mV/mil, UNKNOWN",
    "200 mV/mil, , UNKNOWN",
  })
  void judgesScaleFactors(@Nullable String probe, @Nullable String driver, Verdict verdict) {
    LoopView loop =
        of(probe("1.0").scaleFactor(scale(probe)), driver("5.0").scaleFactor(scale(driver)))
            .holding(SCALES)
            .build();
    assertThat(rule().judge(loop).verdict()).isEqualTo(verdict);
  }

  @Test
  void doesNotJudgeWhatTheSourceHasNoPlaceFor() {
    LoopView.Builder oneSided = of(probe("1.0").tipMillimetres(tip("8")), driver("5.0"));
    assertThat(rule().judge(oneSided.build()).verdict()).isEqualTo(Verdict.NOT_JUDGED);
    assertThat(rule().judge(oneSided.holding(Set.of(Fact.PROBE_TIP)).build()).verdict())
        .isEqualTo(Verdict.NOT_JUDGED);
  }

  @Test
  void whatAPartDoesNotSayIsItsFamilys() {
    LoopView.Builder loop =
        of(probe("1.0").tipMillimetres(tip("5")), driver("5.0").family("R8")).families(FAMILIES);
    assertThat(rule().judge(loop.build()).message())
        .isEqualTo("The probe has a 5 mm tip, the driver is made for 8 mm.");
    LoopView.Builder both =
        of(probe("1.0").family("R8"), driver("5.0").family("R8")).families(FAMILIES);
    assertThat(rule().judge(both.build()).verdict()).isEqualTo(Verdict.MATCHES);
  }
}
