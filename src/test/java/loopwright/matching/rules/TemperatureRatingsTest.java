package loopwright.matching.rules;

import static loopwright.matching.rules.Loops.cable;
import static loopwright.matching.rules.Loops.driver;
import static loopwright.matching.rules.Loops.probe;
import static loopwright.matching.rules.Loops.slot;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import loopwright.matching.Fact;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.PartSheet;
import loopwright.matching.PartView;
import loopwright.matching.Range;
import loopwright.matching.Rule;
import loopwright.matching.Slot;
import loopwright.matching.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Ratings as API Std 670 has them, from memory: probe and cable −35 to 120 °C, driver to 65 °C. */
class TemperatureRatingsTest extends RuleContract {
  private static final Range SENSOR = Range.of("-35", "120");
  private static final Range BOX = Range.of("-35", "65");

  @Override
  Rule rule() {
    return new TemperatureRatings();
  }

  private static PartView.Builder rated(PartView.Builder part, Range rating) {
    return part.sheet(PartSheet.NOT_GIVEN.withCelsius(rating));
  }

  private static LoopView.Builder loop(Range probeRating) {
    return Loops.loop(
            rated(probe("1.0"), probeRating),
            slot(rated(cable("4.0"), SENSOR)),
            rated(driver("5.0"), BOX))
        .holding(Set.of(Fact.TEMPERATURES));
  }

  @ParameterizedTest(name = "tip {0}, route {1}, box {2} °C: {3}")
  @CsvSource({
    "95, 60, 45, MATCHES",
    "120, 120, 65, MATCHES",
    "-35, -35, -35, MATCHES",
    "120.1, 60, 45, REFUSED",
    "95, 140, 45, REFUSED",
    "95, 60, 65.1, REFUSED",
    "95, 60, -36, REFUSED",
    "'', 60, 45, UNKNOWN",
    "95, '', 45, UNKNOWN",
    "95, 60, '', UNKNOWN",
    "'', 60, 80, REFUSED",
  })
  void truthTable(String tip, String route, String box, Verdict verdict) {
    LoopView loop = loop(SENSOR).place(Places.celsius(tip, route, box)).build();
    assertThat(rule().judge(loop).verdict()).isEqualTo(verdict);
  }

  @Test
  void saysWhichPartWhereAndWhatItStands() {
    LoopView loop = loop(SENSOR).place(Places.celsius("95", "60", "80")).build();
    assertThat(rule().judge(loop).message())
        .isEqualTo("80 °C in the box is outside what driver DV-1 stands, from −35 to 65 °C.");
  }

  @Test
  void aRatingThatNobodyEnteredIsUnknown() {
    LoopView loop = loop(Range.NOT_SAID).place(Places.celsius("95", "60", "45")).build();
    Finding finding = rule().judge(loop);
    assertThat(finding.verdict()).isEqualTo(Verdict.UNKNOWN);
    assertThat(finding.message()).contains("probe PR-1");
  }

  @Test
  void aSingleLimitCanRefuseButNotMatch() {
    Range upTo = Places.range(null, "100");
    assertThat(rule().judge(loop(upTo).place(Places.celsius("101", "60", "45")).build()).verdict())
        .isEqualTo(Verdict.REFUSED);
    assertThat(rule().judge(loop(upTo).place(Places.celsius("95", "60", "45")).build()).verdict())
        .isEqualTo(Verdict.UNKNOWN);
  }

  @Test
  void aLeadThatReachesTheDriverIsHeldAgainstTheRoute() {
    LoopView loop =
        Loops.loop(rated(probe("5.0"), SENSOR), Slot.NONE_FITTED, rated(driver("5.0"), BOX))
            .holding(Set.of(Fact.TEMPERATURES))
            .place(Places.celsius("95", "140", "45"))
            .build();
    assertThat(rule().judge(loop).verdict()).isEqualTo(Verdict.REFUSED);
  }

  @Test
  void doesNotJudgeWithoutAPlaceForTemperatures() {
    LoopView loop =
        loop(SENSOR).holding(Set.of()).place(Places.celsius("500", "500", "500")).build();
    assertThat(rule().judge(loop).verdict()).isEqualTo(Verdict.NOT_JUDGED);
  }
}
