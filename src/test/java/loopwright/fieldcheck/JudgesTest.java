package loopwright.fieldcheck;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import loopwright.curve.Curve;
import loopwright.curve.CurveReading;
import loopwright.curve.Run;
import loopwright.dynamic.Amplitude;
import loopwright.dynamic.ResponseBand;
import loopwright.dynamic.StaticCurve;
import loopwright.matching.KnownLength;
import loopwright.matching.LoopView;
import loopwright.matching.PartKind;
import loopwright.matching.PartView;
import loopwright.matching.Slot;
import loopwright.plant.Channel;
import loopwright.plant.ChannelId;
import loopwright.plant.ChannelRole;
import loopwright.plant.ChannelSetting;
import loopwright.plant.Direction;
import loopwright.plant.Limits;
import loopwright.plant.PointChannel;
import loopwright.plant.PointKind;
import loopwright.plant.SettingBasis;
import loopwright.plant.SiteId;
import loopwright.units.Reported;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What checks say, against the sources named beside each rule. */
class JudgesTest {
  private static Entered number(String item, int row, String typed, String unit) {
    Unit as = Unit.named(unit).orElseThrow();
    return Entered.of(item, row, Reported.read(typed, as).orElseThrow());
  }

  private static Entries of(Entered... entered) {
    return new Entries(List.of(entered));
  }

  private static Background loop(String tip, String lead, String cable) {
    PartView probe =
        PartView.of(PartKind.PROBE)
            .tipMillimetres(new BigDecimal(tip))
            .length(KnownLength.readOnPart(lead))
            .build();
    PartView extension = PartView.of(PartKind.CABLE).length(KnownLength.readOnPart(cable)).build();
    LoopView view =
        LoopView.at("V-1").probe(Slot.of(probe)).path(List.of(Slot.of(extension))).build();
    return new Background(PointKind.RADIAL, view, List.of(), Optional.empty());
  }

  /** Sums of the training handout's table: 1.0 + 4.0 m 8.73 Ω ± 0.68, 1.0 + 8.0 m 9.88 Ω ± 0.87. */
  @ParameterizedTest(name = "{0} mm, {1} + {2} m, {3} Ω: {4}")
  @CsvSource(
      textBlock =
          """
      8,  1, 4, 8.73,  matches
      8,  1, 4, 9.41,  matches
      8,  1, 4, 9.42,  attention
      8,  1, 4, 8.05,  matches
      8,  1, 4, 8.04,  attention
      8,  1, 8, 9.01,  matches
      8,  1, 8, 9.00,  attention
      8,  1, 6, 9.30,  not judged
      11, 1, 4, 8.73,  not judged
      """)
  void resistanceOfTheWholeLine(
      String tip, String lead, String cable, String ohms, String verdict) {
    List<Said> said =
        ElectricalJudge.judge(of(number("loop", 0, ohms, "Ω")), loop(tip, lead, cable));
    assertThat(said).extracting(s -> s.verdict().word()).containsExactly(verdict);
  }

  @ParameterizedTest(name = "{0} {1} {2}: {3}")
  @CsvSource(
      textBlock =
          """
      supply,     -24,   V,  matches
      supply,     -17.5, V,  matches
      supply,     -17.4, V,  attention
      supply,     -26.1, V,  attention
      coil,       7.59,  Ω,  matches
      coil,       1.2,   Ω,  attention
      coil,       90,    Ω,  attention
      insulation, 1,     MΩ, matches
      insulation, 999,   kΩ, attention
      shield,     1.9,   Ω,  matches
      shield,     5.1,   Ω,  attention
      """)
  void electricalLimits(String item, String typed, String unit, String verdict) {
    List<Said> said = ElectricalJudge.judge(of(number(item, 0, typed, unit)), loop("8", "1", "4"));
    assertThat(said).extracting(s -> s.verdict().word()).containsExactly(verdict);
    assertThat(said.get(0).basis()).containsAnyOf("memory", "practice", "handout");
  }

  private static Background told(PointKind kind, ChannelSetting setting) {
    Channel channel =
        new Channel(new ChannelId(1), new SiteId(1), new Channel.Position("R1", 3, 2), 1);
    return new Background(
        kind,
        LoopView.at("V-1").build(),
        List.of(new PointChannel(channel, ChannelRole.MEASURES, setting, null)),
        Optional.empty());
  }

  private static ChannelSetting setting(Limits fullScale, Limits alert) {
    return new ChannelSetting(
        SettingBasis.APPROVED,
        Instant.EPOCH,
        ScaleFactor.millivoltsPerMil("200"),
        "",
        fullScale,
        alert,
        Limits.NONE,
        Unit.MICROMETRE,
        ChannelSetting.Delays.NOT_SAID,
        Limits.NONE,
        new BigDecimal("-10"),
        Direction.TOWARD,
        "");
  }

  private static Limits high(String high) {
    return new Limits(null, new BigDecimal(high));
  }

  /** 50.8 µm pk-pk at 200 mV/mil is 400.0 mV pk-pk or 141.42 mV rms of a sine. */
  @ParameterizedTest(name = "{0} {1} {2} shows {3} µm: {4}")
  @CsvSource(
      textBlock =
          """
      400,    mV, pk-pk, 50.8,  matches
      0.2,    V,  peak,  50.8,  matches
      141.42, mV, rms,   50.8,  matches
      400,    mV, pk-pk, 53.2,  matches
      400,    mV, pk-pk, 53.4,  attention
      400,    mV, pk-pk, 48.2,  attention
      """)
  void aMonitorMayBeOffByOnePercentOfFullScale(
      String injected, String unit, String as, String shown, String verdict) {
    Entries entries =
        of(
            Entered.of("injected-as", as),
            number("injected", 1, injected, unit),
            number("shown", 1, shown, "µm"));
    List<Said> said =
        ChannelJudge.judge(entries, told(PointKind.RADIAL, setting(high("250"), Limits.NONE)));
    assertThat(said).extracting(s -> s.verdict().word()).containsExactly(verdict);
  }

  @ParameterizedTest(name = "{0} V shows {1} µm: {2}")
  @CsvSource({"-8, 254, matches", "-12, -254, matches", "-8, -254, attention"})
  void aPositionCountsFromZeroWithItsSign(String volts, String shown, String verdict) {
    Limits scale = new Limits(new BigDecimal("-1000"), new BigDecimal("1000"));
    Entries entries =
        of(
            Entered.of("injected-as", "direct voltage"),
            number("injected", 1, volts, "V"),
            number("shown", 1, shown, "µm"));
    assertThat(ChannelJudge.judge(entries, told(PointKind.AXIAL, setting(scale, Limits.NONE))))
        .extracting(s -> s.verdict().word())
        .containsExactly(verdict);
  }

  @Test
  void levelsAreHeldAgainstWhatWasToldAndFunctionsAreSeenToAct() {
    Entries entries =
        of(
            number("alert", 0, "103", "µm"),
            Entered.of("relay", "inhibited"),
            Entered.of("ok-fault", "did not act"));
    assertThat(
            ChannelJudge.judge(entries, told(PointKind.RADIAL, setting(high("250"), high("100")))))
        .extracting(s -> s.about() + " " + s.verdict().word())
        .containsExactly("alert attention", "not-OK attention", "relay not judged");
    Background none =
        new Background(PointKind.RADIAL, LoopView.at("V-1").build(), List.of(), Optional.empty());
    assertThat(ChannelJudge.judge(of(number("alert", 0, "103", "µm")), none))
        .extracting(s -> s.verdict().word())
        .containsExactly("not judged");
  }

  @ParameterizedTest(name = "{0} of {1}: {2}")
  @CsvSource({
    "6.35, , matches",
    "6.4, , not judged",
    "12.7, 50.8, matches",
    "12.8, 50.8, attention",
    "6.3, 22.7, matches",
    "6.4, 22.7, attention"
  })
  void runOut(String size, String allowed, String verdict) {
    List<Entered> entered = new ArrayList<>();
    entered.add(number("amplitude", 0, size, "µm"));
    if (allowed != null) {
      entered.add(number("allowed", 0, allowed, "µm"));
    }
    Background none =
        new Background(PointKind.RADIAL, LoopView.at("V-1").build(), List.of(), Optional.empty());
    assertThat(SlowRollJudge.judge(new Entries(entered), none))
        .extracting(s -> s.verdict().word())
        .containsExactly(verdict);
  }

  @Test
  void vectorsAreSubtractedAsVectorsAndLeadIsLagTheOtherWay() {
    SlowRollJudge.Vector lag = vector("10", "90", "lag");
    assertThat(lag.distanceTo(vector("10", "90", "lead"))).isCloseTo(20, within(1e-9));
    assertThat(lag.distanceTo(vector("10", "270", "lead"))).isCloseTo(0, within(1e-9));
    assertThat(lag.distanceTo(vector("10", "0", "lag"))).isCloseTo(14.142, within(1e-3));
  }

  private static SlowRollJudge.Vector vector(String size, String phase, String as) {
    return SlowRollJudge.Vector.of(
            of(
                number("amplitude", 0, size, "µm"),
                number("phase", 0, phase, "°"),
                Entered.of("phase-as", as)))
        .orElseThrow();
  }

  /** A sine of 50.8 µm pk-pk at 200 mV/mil: 400.0 mV pk-pk, 141.42 mV rms (exact relations). */
  @Test
  void aSineIsTheSameSineInAllThreeSizes() {
    assertThat(Amplitude.RMS.toPeakToPeak(141.4213562373095)).isCloseTo(400, within(1e-12));
    assertThat(Amplitude.PEAK.toPeakToPeak(200)).isEqualTo(400);
    for (Amplitude each : Amplitude.values()) {
      assertThat(each.fromPeakToPeak(each.toPeakToPeak(3))).isCloseTo(3, within(1e-15));
      assertThat(Amplitude.named(each.word())).contains(each);
    }
  }

  private static Background withCurve(String nominal) {
    return withCurve(nominal, OptionalDouble.empty());
  }

  private static Background withCurve(String nominal, OptionalDouble ofRecord) {
    PartView driver =
        PartView.of(PartKind.DRIVER).scaleFactor(ScaleFactor.millivoltsPerMil(nominal)).build();
    List<CurveReading> readings = new ArrayList<>();
    for (int mil = 10; mil <= 90; mil += 10) {
      readings.add(
          CurveReading.of(
              Run.UP,
              Reported.read(Integer.toString(mil), Unit.MIL).orElseThrow(),
              Reported.read(Double.toString(-0.2 * mil), Unit.VOLT).orElseThrow()));
    }
    StaticCurve curve = StaticCurve.of(new Curve(readings)).orElseThrow();
    return new Background(
        PointKind.RADIAL,
        LoopView.at("V-1").driver(Slot.of(driver)).build(),
        List.of(),
        Optional.empty(),
        Optional.of(new Background.AsLeft("C-1", curve, gap -> ofRecord)),
        OptionalDouble.empty(),
        Optional.empty());
  }

  /**
   * Static 200 mV/mil with u 0.8 %, dynamic with u 0.6 %: one combined uncertainty is 1 % where
   * both are equal, so 2.1 % are too many and 1.9 % are not.
   */
  @ParameterizedTest(name = "{0} mV pk-pk for 1 mil: {1}, {2}")
  @CsvSource({
    "203.8, matches, matches",
    "204.3, matches, attention",
    "196.2, matches, matches",
    "211, attention, attention"
  })
  void staticAndDynamicShouldAgree(String output, String nominal, String curve) {
    Entries entries =
        of(
            number("displacement", 0, "1", "mil"),
            Entered.of("displacement-as", "pk-pk"),
            number("frequency", 0, "60", "Hz"),
            number("output", 0, output, "mV"),
            Entered.of("output-as", "pk-pk"),
            number("gap-volts", 0, "-10", "V"),
            number("u-displacement", 0, "0.6", "%"),
            number("u-output", 0, "0", "%"),
            number("u-static", 0, "0.8", "%"));
    List<Said> said = DynamicJudge.judge(entries, withCurve("200"));
    assertThat(said)
        .extracting(s -> s.about() + " " + s.verdict().word())
        .containsExactly("sensitivity not judged", "nominal " + nominal, "static curve " + curve);
    assertThat(said.get(2).sentence()).contains("combined standard uncertainties", "C-1 at 1270.0");
  }

  /** Without a typed one, the static slope's uncertainty is that of the as-left record's budget. */
  @Test
  void theRecordsOwnBudgetSaysWhatItsSlopeIsWorth() {
    Entries entries =
        of(
            number("displacement", 0, "1", "mil"),
            Entered.of("displacement-as", "pk-pk"),
            number("frequency", 0, "60", "Hz"),
            number("output", 0, "204.3", "mV"),
            Entered.of("output-as", "pk-pk"),
            number("gap-volts", 0, "-10", "V"),
            number("u-displacement", 0, "0.6", "%"),
            number("u-output", 0, "0", "%"));
    assertThat(DynamicJudge.judge(entries, withCurve("200")).get(2).sentence())
        .contains("can't be said");
    Said compared = DynamicJudge.judge(entries, withCurve("200", OptionalDouble.of(0.008))).get(2);
    assertThat(compared.sentence()).contains("don't agree", "2.1 combined");
    assertThat(DynamicJudge.judge(entries, withCurve("200", OptionalDouble.of(0.02))).get(2))
        .extracting(said -> said.verdict().word())
        .isEqualTo("matches");
  }

  private static Background.AllowedResponse allowed(String... rows) {
    List<ResponseBand.Stretch> stretches = new ArrayList<>();
    for (String row : rows) {
      List<BigDecimal> cells = new ArrayList<>();
      for (String cell : row.split(",", -1)) {
        cells.add(cell.isBlank() ? null : new BigDecimal(cell.strip()));
      }
      stretches.add(
          new ResponseBand.Stretch(
              cells.get(0), cells.get(1), cells.get(2), cells.get(3), cells.get(4), cells.get(5)));
    }
    return new Background.AllowedResponse(7, "own, version 2", new ResponseBand("own", stretches));
  }

  /** 1 mil pk-pk each; at 10 Hz 200 mV and 170°, at 1 kHz 180 mV (−0.915 dB) and −178° (+12°). */
  private static Entries response() {
    List<Entered> all = new ArrayList<>();
    all.add(Entered.of("displacement-as", "pk-pk"));
    all.add(Entered.of("output-as", "pk-pk"));
    String[][] rows = {{"10", "200", "170"}, {"1000", "180", "-178"}, {"20000", "60", "100"}};
    for (int i = 0; i < rows.length; i++) {
      all.add(number("at", i + 1, rows[i][0], "Hz"));
      all.add(number("moved", i + 1, "1", "mil"));
      all.add(number("gave", i + 1, rows[i][1], "mV"));
      all.add(number("phase", i + 1, rows[i][2], "°"));
    }
    return new Entries(all);
  }

  @ParameterizedTest(name = "{0}: {1}, {2}")
  @CsvSource(
      delimiter = '|',
      value = {
        "0,10000,-3,,,          | response matches                              | 1 of 3",
        "0,10000,-0.9,,,        | response attention                            | 1 of 3",
        "0,10000,-0.92,0,-5,12  | response matches; phase matches               | 1 of 3",
        "0,10000,-1,0,-5,11.9   | response matches; phase attention             | 1 of 3",
        "0,30000,-3,,,          | response attention                            |",
        "0,10000,,0.5,,         | response matches                              | 1 of 3"
      })
  void aResponseIsJudgedByTheProfilesBand(String row, String verdicts, String beyond) {
    List<Said> said = ResponseJudge.judge(response(), Optional.of(allowed(row)));
    assertThat(
            said.stream()
                .filter(s -> !s.verdict().word().equals("not judged"))
                .map(s -> s.about() + " " + s.verdict().word())
                .collect(Collectors.joining("; ")))
        .isEqualTo(verdicts.strip());
    assertThat(said).anyMatch(s -> s.basis().contains("profile own, version 2"));
    if (beyond != null) {
      assertThat(said).anyMatch(s -> s.sentence().startsWith(beyond));
    }
    assertThat(ResponseDrawing.svg(response(), Optional.of(allowed(row).band())).orElseThrow())
        .contains("from that at the lowest frequency");
  }

  @Test
  void whereRangesMeetBothCountAndABandTypedBesideTheProfilesIsJudgedToo() {
    ResponseBand band = allowed("0,1000,-3,1,,", "1000,5000,-1,2,,").band();
    assertThat(band.level(1000)).isEqualTo(new ResponseBand.Allowed(-1, 1));
    assertThat(band.level(6000).isLimit()).isFalse();
    assertThat(band.reaches(6000)).isFalse();
    List<Entered> all = new ArrayList<>(response().all());
    all.add(number("band-low", 0, "-20", "dB"));
    List<Said> said = ResponseJudge.judge(new Entries(all), Optional.of(allowed("0,30000,-3,,,")));
    assertThat(said).extracting(s -> s.verdict().word()).startsWith("attention", "matches");
    assertThatThrownBy(() -> allowed("10,5,-3,,,")).hasMessageContaining("upwards");
    assertThatThrownBy(() -> allowed("0,5,3,1,,")).hasMessageContaining("level");
    assertThatThrownBy(() -> allowed("0,5,,,,")).hasMessageContaining("limit");
  }

  @Test
  void whatWasSaidIsKeptAndReadBack() {
    List<Said> said =
        List.of(Said.judged(false, "supply", "It is low.", "from memory"), Said.only("x", "shown"));
    assertThat(Said.read(Said.kept(said))).isEqualTo(said);
    assertThat(Said.worst(said).word()).isEqualTo("attention");
  }
}
