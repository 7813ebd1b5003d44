package loopwright.loop;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import loopwright.matching.Evidence;
import loopwright.matching.Finding;
import loopwright.matching.Judgement;
import loopwright.matching.KnownLength;
import loopwright.matching.LoopView;
import loopwright.matching.PartKind;
import loopwright.matching.PartName;
import loopwright.matching.PartView;
import loopwright.matching.rules.StandardRules;
import loopwright.plant.Channel;
import loopwright.plant.ChannelId;
import loopwright.plant.ChannelRole;
import loopwright.plant.ChannelSetting;
import loopwright.plant.Direction;
import loopwright.plant.Limits;
import loopwright.plant.PointChannel;
import loopwright.plant.SettingBasis;
import loopwright.plant.SiteId;
import loopwright.units.Length;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import loopwright.web.UnitsShown;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The small classes that turn judgements and settings into words. */
class WordsForPagesTest {
  private static final Instant NOW = Instant.parse("2026-03-01T10:00:00Z");

  private static PartView part(PartKind kind, String serial, @Nullable String metres) {
    return PartView.of(kind)
        .name(new PartName("Nordling", "X9", serial.isEmpty() ? null : serial, null))
        .length(
            metres == null ? null : new KnownLength(Length.ofMetres(metres), Evidence.READ_ON_PART))
        .build();
  }

  private static Judgement judged(String cableMetres) {
    return StandardRules.book()
        .judge(
            LoopView.at("V-1")
                .probe(loopwright.matching.Slot.of(part(PartKind.PROBE, "P-1", "1")))
                .path(
                    List.of(loopwright.matching.Slot.of(part(PartKind.CABLE, "C-1", cableMetres))))
                .driver(loopwright.matching.Slot.of(part(PartKind.DRIVER, "D-1", "5")))
                .build());
  }

  @Test
  void theHeadlineIsTheWorstFinding() {
    assertThat(Headline.of(judged("4.5"))).contains("0.5 m (1.6 ft) too long");
    assertThat(Headline.of(judged("4"))).isEqualTo("All that was judged matches.");
  }

  @Test
  void findingsBecomeRowsWorstFirst() {
    Judgement judgement = judged("4.5");
    List<Shown.Row> rows = Shown.rows(judgement);
    assertThat(rows).hasSameSizeAs(judgement.findings());
    assertThat(rows.get(0).rule()).isEqualTo("Length balance");
    assertThat(rows.get(0).verdict()).isEqualTo("refused");
    assertThat(rows)
        .allSatisfy(row -> assertThat(row.basis()).startsWith("Basis: ").hasSizeGreaterThan(8));
    assertThat(judgement.findings()).extracting(Finding::message).noneMatch(String::isBlank);
  }

  @Test
  void lengthsStandInBothUnitsTheReadersFirst() {
    Length length = Length.ofMetres("4.572");
    assertThat(Shown.length(length, UnitsShown.METRIC)).isEqualTo("4.572 m (15.0 ft)");
    assertThat(Shown.length(length, UnitsShown.MIL)).isEqualTo("15.0 ft (4.572 m)");
    assertThat(Shown.length((Length) null, UnitsShown.MIL)).isEqualTo("not known");
    assertThat(Shown.length((KnownLength) null, UnitsShown.MIL)).isEqualTo("not known");
    assertThat(Shown.length(new KnownLength(length, Evidence.ASSUMED), UnitsShown.METRIC))
        .isEqualTo("4.572 m (15.0 ft), " + Evidence.ASSUMED.phrase());
    assertThat(Shown.balance(Length.ofMetres("-0.5"), UnitsShown.METRIC)).isEqualTo("−0.5 m");
    assertThat(Shown.balance(Length.ofMetres("0.5"), UnitsShown.MIL)).isEqualTo("+1.6 ft");
    assertThat(Shown.balance(Length.ZERO, UnitsShown.METRIC)).isEqualTo("0.0 m");
    assertThat(Shown.balance(null, UnitsShown.METRIC)).isEmpty();
  }

  @Test
  void slotsAreNamedByWhatStandsInThem() {
    loopwright.matching.Slot adapter =
        loopwright.matching.Slot.of(part(PartKind.ADAPTER, "A-1", null));
    assertThat(Words.slot(Slot.PATH_1, adapter)).isEqualTo("adapter");
    assertThat(Words.slot(Slot.PATH_1, loopwright.matching.Slot.NONE_FITTED))
        .isEqualTo("extension cable");
    assertThat(Words.slot(Slot.PATH_3, loopwright.matching.Slot.NONE_FITTED)).isEqualTo("path 3");
    assertThat(Words.usual(Slot.PROBE)).isEqualTo("probe");
    assertThat(Words.usual(Slot.DRIVER)).isEqualTo("driver");
    assertThat(Shown.words(adapter)).isEqualTo("A-1");
    assertThat(Shown.words(loopwright.matching.Slot.of(part(PartKind.CABLE, "", null))))
        .isEqualTo("fitted, not identified");
    assertThat(Shown.words(loopwright.matching.Slot.NONE_FITTED)).isEqualTo("none fitted");
    assertThat(Shown.words(loopwright.matching.Slot.NOT_RECORDED)).isEqualTo("not known");
    assertThat(Shown.about(part(PartKind.CABLE, "C-1", null))).isEqualTo("Nordling X9");
    assertThat(loopwright.problem.Text.capital("length balance")).isEqualTo("Length balance");
    assertThat(loopwright.problem.Text.capital("")).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "2026-03-01T09:59:00Z, 0 h",
    "2026-03-01T10:01:00Z, 0 h",
    "2026-02-28T22:00:00Z, 12 h",
    "2026-02-27T10:00:00Z, 2 days",
    "2025-12-31T10:00:00Z, 2 months",
    "2023-03-01T10:00:00Z, 3 years"
  })
  void howLongAgoIsRough(String since, String said) {
    assertThat(Shown.ago(Instant.parse(since), NOW)).isEqualTo(said);
    assertThat(Shown.ago(null, NOW)).isEmpty();
  }

  private static List<String> lines(
      @Nullable ChannelSetting approved, @Nullable ChannelSetting found) {
    Channel channel =
        new Channel(new ChannelId(1), new SiteId(1), new Channel.Position("R1", 3, 2), 1);
    List<ChannelLines.Shown> shown =
        ChannelLines.of(
            List.of(new PointChannel(channel, ChannelRole.values()[0], approved, found)));
    assertThat(shown)
        .singleElement()
        .extracting(ChannelLines.Shown::name)
        .isEqualTo("R1 slot 3 channel 2");
    return shown.get(0).lines();
  }

  private static Limits limits(@Nullable String low, @Nullable String high) {
    return new Limits(
        low == null ? null : new BigDecimal(low), high == null ? null : new BigDecimal(high));
  }

  @Test
  void whatTheMonitorWasToldIsSaidWhole() {
    ChannelSetting axial =
        new ChannelSetting(
            SettingBasis.APPROVED,
            NOW,
            ScaleFactor.millivoltsPerMil("200"),
            "shaft of another alloy",
            limits("-40", "40"),
            limits("-20.0", "20"),
            limits(null, "30"),
            Unit.MIL,
            new ChannelSetting.Delays(new BigDecimal("3"), new BigDecimal("1.50")),
            limits("-18.5", null),
            new BigDecimal("-10.000"),
            Direction.TOWARD,
            "CA-7");
    assertThat(lines(axial, null))
        .containsExactly(
            "approved: scale factor 200 mV/mil (shaft of another alloy), full scale -40 … 40 mil,"
                + " alert -20 … 20 mil after 3 s, danger 30 mil after 1.5 s, OK from -18.5 V,"
                + " zero at -10 V, positive toward the probe, by authority CA-7");
  }

  @Test
  void aChannelOfWhichLittleIsKnownSaysSo() {
    assertThat(lines(null, null)).containsExactly("No setting is recorded.");
    ChannelSetting empty = ChannelSetting.of(SettingBasis.FOUND, NOW, null);
    assertThat(lines(null, empty)).containsExactly("found: nothing that is recorded here");
    ChannelSetting scale =
        ChannelSetting.of(SettingBasis.APPROVED, NOW, ScaleFactor.millivoltsPerMicrometre("8"));
    assertThat(lines(scale, empty))
        .containsExactly("approved: scale factor 8 mV/µm", "found: nothing that is recorded here");
  }
}
