package loopwright.matching.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import loopwright.matching.Calibration;
import loopwright.matching.ChannelView;
import loopwright.matching.Fact;
import loopwright.matching.Families;
import loopwright.matching.FamilyView;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.Measures;
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
 * By hand: 8 mV/µm, linear from 250 to 2250 µm and −2 to −18 V, set at 1250 µm = −10 V. Danger at
 * 1600 µm peak to peak swings from 450 to 2050 µm, that is −3.6 to −16.4 V; OK limits of −16.75 …
 * −2.75 V (from memory) lie beyond that, those of −16 … −2.75 V don't.
 */
class ChannelSettingsTest extends RuleContract {
  private static final ScaleFactor NOMINAL = ScaleFactor.millivoltsPerMicrometre("8");
  private static final Range OK = Range.of("-16.75", "-2.75");
  private static final FamilyView FAMILY =
      FamilyView.of("V8")
          .line(new NominalLine(250, 2250, -2, 8))
          .scaleFactor(NOMINAL)
          .targetAlloy("4140")
          .build();

  @Override
  Rule rule() {
    return new ChannelSettings();
  }

  private static LoopView.Builder loop(ChannelView... channels) {
    return Loops.ofFamily("V8", "1.0", "4.0", "5.0")
        .families(Families.of(List.of(FAMILY), List.of()))
        .holding(Set.of(Fact.CHANNELS))
        .place(Places.radial(channels));
  }

  private static ChannelView channel(String danger, String full, Range ok) {
    return channel(danger, full, ok, NOMINAL, "");
  }

  private static ChannelView channel(
      String danger, String full, Range ok, ScaleFactor scale, String reason) {
    return new ChannelView(
        "R1/2/3",
        scale,
        reason,
        Places.range(null, full),
        Places.range(null, danger),
        Unit.MICROMETRE,
        ok,
        null,
        null);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = ';',
      textBlock =
          """
          usual levels;                        130;  250;  -16.75; -2.75; MATCHES
          danger just inside OK;               1600; 2000; -16.75; -2.75; MATCHES
          OK reached before danger, far side;  1600; 2000; -16;    -2.75; REFUSED
          OK reached before danger, near side; 1600; 2000; -16.75; -3.7;  REFUSED
          OK exactly on danger;                1600; 2000; -16.4;  -2.75; REFUSED
          danger exactly on the range;         2000; 2000; -18.5;  -1.5;  MATCHES
          danger beyond the range;             2002; 2000; -18.9;  -1;    REFUSED
          full scale beyond the range;         130;  2002; -16.75; -2.75; ATTENTION
          OK beyond what a driver gives;       130;  250;  -23.5;  -2.75; REFUSED
          OK above what a driver gives;        130;  250;  -16.75; -0.3;  REFUSED
          danger is not known;                 '';   250;  -16.75; -2.75; UNKNOWN
          full scale is not known;             130;  '';   -16.75; -2.75; UNKNOWN
          an OK limit is not known;            130;  250;  -16.75; '';    UNKNOWN
          """)
  void truthTable(
      String name, String danger, String full, String low, String high, Verdict verdict) {
    ChannelView channel = channel(danger, full, Places.range(low, high));
    assertThat(rule().judge(loop(channel).build()).verdict()).isEqualTo(verdict);
  }

  @Test
  void theExampleInWords() {
    Finding finding = rule().judge(loop(channel("1600", "2000", Range.of("-16", "-2.75"))).build());
    assertThat(finding.message())
        .isEqualTo(
            "Danger at 1600 µm on channel R1/2/3 swings from 450 to 2050 µm, that is −3.6 V to −16.4"
                + " V; OK limits −16 V … −2.75 V are reached before danger.");
  }

  @Test
  void aFamilyMaySayWhatItsDriversPutOut() {
    FamilyView wide =
        FamilyView.of("V8")
            .line(new NominalLine(250, 2250, -2, 8))
            .scaleFactor(NOMINAL)
            .outputVolts(Range.of("-24", "-0.2"))
            .build();
    LoopView.Builder loop = loop(channel("130", "250", Range.of("-23.5", "-0.3")));
    assertThat(rule().judge(loop.build()).verdict()).isEqualTo(Verdict.REFUSED);
    assertThat(rule().judge(loop.families(Families.of(List.of(wide), List.of())).build()).verdict())
        .isEqualTo(Verdict.MATCHES);
  }

  @Test
  void withoutTheGapToSetNothingIsKnownOfTheSwing() {
    LoopView loop =
        loop()
            .place(Places.place(Measures.RADIAL_VIBRATION, null, channel("130", "250", OK)))
            .build();
    assertThat(rule().judge(loop).verdict()).isEqualTo(Verdict.UNKNOWN);
  }

  /**
   * Measured 8.6 mV/µm; 304 against 4140 is 1.25, so 10 mV/µm (vibration handbooks, from memory).
   */
  @ParameterizedTest(name = "told {0}, reason {1}, measured {2}, shaft of {3}")
  @CsvSource({
    "8, '', '', '', MATCHES",
    "8.000, '', '', '', MATCHES",
    "8.005, '', '', '', ATTENTION",
    "8.6, '', 8.6, '', REFUSED",
    "8.6, measured, 8.58, '', MATCHES",
    "8.6, measured, '', '', ATTENTION",
    "8.6, measured, 9.1, '', ATTENTION",
    "10, shaft of 304, '', 304, MATCHES",
    "10, shaft of 304, '', 4140, ATTENTION",
    "10, '', '', 304, REFUSED",
    "7.87, '', '', '', REFUSED",
  })
  void scaleFactors(String told, String reason, String measured, String shaft, Verdict verdict) {
    ChannelView channel =
        channel("130", "250", OK, ScaleFactor.millivoltsPerMicrometre(told), reason);
    LoopView.Builder loop = loop();
    if (!measured.isEmpty()) {
      loop.calibration(
          new Calibration(
              LocalDate.parse("2025-11-02"),
              Calibration.Outcome.CONFORMS,
              List.of(),
              "4140",
              Double.valueOf(measured)));
    }
    LoopView view =
        loop.alloys(Places.ALLOYS)
            .place(
                new loopwright.matching.PlaceView(
                    Measures.RADIAL_VIBRATION,
                    shaft,
                    "",
                    loopwright.matching.PlaceView.FieldCable.NOT_SAID,
                    null,
                    null,
                    null,
                    1250.0,
                    List.of(channel)))
            .build();
    assertThat(rule().judge(view).verdict()).isEqualTo(verdict);
  }

  @Test
  void phaseReferencesNeedNoLevels() {
    ChannelView channel = channel("", "", Range.of("-17.5", "-1.5"), null, "");
    LoopView loop = loop().place(Places.place(Measures.MARK, 1250.0, channel)).build();
    assertThat(rule().judge(loop).verdict()).isEqualTo(Verdict.MATCHES);
  }

  /** ±1000 µm about −10 V is 250 … 2250 µm, the whole range; ±1100 µm is beyond it. */
  @ParameterizedTest
  @CsvSource({"1000, MATCHES", "1100, ATTENTION"})
  void fullScaleOfAPositionCountsFromZero(String full, Verdict verdict) {
    ChannelView channel =
        new ChannelView(
            "R1/4/1",
            NOMINAL,
            "",
            Places.range("-" + full, full),
            Range.of("-700", "700"),
            Unit.MICROMETRE,
            Range.of("-19", "-1.3"),
            Places.number("-10"),
            true);
    assertThat(rule().judge(loop().place(Places.axial(channel)).build()).verdict())
        .isEqualTo(verdict);
  }

  @Test
  void aLoopWithoutAChannelIsUnknownWhereChannelsAreKept() {
    assertThat(rule().judge(loop().build()).verdict()).isEqualTo(Verdict.UNKNOWN);
    assertThat(rule().judge(loop().holding(Set.of()).build()).verdict())
        .isEqualTo(Verdict.NOT_JUDGED);
  }

  @Test
  void aTransmitterPutsOutACurrent() {
    FamilyView current = FamilyView.of("V8").output(Output.CURRENT).build();
    LoopView loop =
        loop(channel("130", "250", OK)).families(Families.of(List.of(current), List.of())).build();
    assertThat(rule().judge(loop).verdict()).isEqualTo(Verdict.NOT_JUDGED);
  }

  @Test
  void neverBlocksAssembly() {
    assertThat(rule().blocksAssembly()).isFalse();
  }
}
