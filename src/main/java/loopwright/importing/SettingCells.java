package loopwright.importing;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import loopwright.plant.ChannelSetting;
import loopwright.plant.Direction;
import loopwright.plant.Limits;
import loopwright.plant.SettingBasis;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.jspecify.annotations.Nullable;

/**
 * What a row says of the approved setting of its monitor channel; an empty cell leaves what is
 * recorded.
 */
record SettingCells(
    Optional<ScaleFactor> scaleFactor,
    String scaleReason,
    Pair fullScale,
    Pair alert,
    Pair danger,
    Optional<Unit> levelUnit,
    Optional<BigDecimal> alertDelay,
    Optional<BigDecimal> dangerDelay,
    Pair okVolts,
    Optional<BigDecimal> zeroVolts,
    Optional<Direction> positive,
    String authority,
    Optional<Instant> from) {

  static final List<String> HEADINGS =
      List.of(
          "settings_from",
          "scale_factor_mv_um",
          "scale_factor_mv_mil",
          "scale_factor_reason",
          "full_scale_low",
          "full_scale_high",
          "alert_low",
          "alert_high",
          "danger_low",
          "danger_high",
          "level_unit",
          "alert_delay_s",
          "danger_delay_s",
          "ok_low_v",
          "ok_high_v",
          "zero_v",
          "positive_direction",
          "authority");

  /** Limits as far as they are given. */
  record Pair(Optional<BigDecimal> low, Optional<BigDecimal> high) {
    static Pair read(RowCells row, String stem, String end) {
      return new Pair(row.number(stem + "_low" + end), row.number(stem + "_high" + end));
    }

    Limits over(Limits was) {
      return new Limits(low.orElse(was.low()), high.orElse(was.high()));
    }
  }

  static SettingCells read(RowCells row, ZoneId zone, Instant now) {
    return new SettingCells(
        ScaleCells.read(row),
        row.text("scale_factor_reason"),
        Pair.read(row, "full_scale", ""),
        Pair.read(row, "alert", ""),
        Pair.read(row, "danger", ""),
        levelUnit(row),
        row.number("alert_delay_s"),
        row.number("danger_delay_s"),
        Pair.read(row, "ok", "_v"),
        row.number("zero_v"),
        row.choice("positive_direction", Arrays.asList(Direction.values()), Direction::word),
        row.text("authority"),
        row.past("settings_from", zone, now));
  }

  private static Optional<Unit> levelUnit(RowCells row) {
    String text = row.text("level_unit");
    Optional<Unit> unit =
        text.isEmpty()
            ? Optional.empty()
            : Unit.named(text).filter(u -> u == Unit.MICROMETRE || u == Unit.MIL);
    if (unit.isEmpty() && !text.isEmpty()) {
      row.complain(
          "level_unit", ImportProblem.UNKNOWN_WORD, Shown.cell(text), "µm", "Known are: µm, mil.");
    }
    return unit;
  }

  /**
   * The setting with what the row says put over what was recorded.
   *
   * @param from since when it holds
   */
  ChannelSetting over(@Nullable ChannelSetting was, Instant from) {
    ChannelSetting base = was == null ? ChannelSetting.of(SettingBasis.APPROVED, from, null) : was;
    return new ChannelSetting(
        SettingBasis.APPROVED,
        from,
        scaleFactor.orElse(base.scaleFactor()),
        scaleReason.isEmpty() ? base.scaleReason() : scaleReason,
        fullScale.over(base.fullScale()),
        alert.over(base.alert()),
        danger.over(base.danger()),
        levelUnit.orElse(base.levelUnit()),
        new ChannelSetting.Delays(
            alertDelay.orElse(base.delays().alertSeconds()),
            dangerDelay.orElse(base.delays().dangerSeconds())),
        okVolts.over(base.okVolts()),
        zeroVolts.orElse(base.zeroVolts()),
        positive.orElse(base.positive()),
        authority.isEmpty() ? base.authority() : authority);
  }
}
