package loopwright.matching.rules;

import java.math.BigDecimal;
import java.util.stream.Collectors;
import loopwright.matching.ChannelView;
import loopwright.matching.LoopView;
import loopwright.matching.Measures;
import loopwright.units.Length;
import loopwright.units.Unit;

/**
 * What a loop out of balance does to what the monitor shows: S_t = k · S with k = (system length /
 * fitted length)^n, n = 1.0 ± 0.35 (common practice and simulation, no source). Vibration is shown
 * times k, so a set point A acts at A/k. More than 25 % of the system length off is beyond the
 * model.
 */
final class ExpectedEffect {
  private static final double EXPONENT = 1.0;
  private static final double SPREAD = 0.35;
  private static final double MOST_SHARE = 0.25;

  private ExpectedEffect() {}

  /**
   * @param balance fitted − tuned for, off zero
   * @param system that the driver is tuned for, above zero
   * @return whole sentences
   */
  static String of(LoopView loop, Length balance, Length system) {
    double tuned = system.metres().doubleValue();
    double off = balance.metres().doubleValue();
    if (Math.abs(off) > MOST_SHARE * tuned) {
      return "That is more than a quarter of the system length, beyond what can be estimated: expect"
          + " nothing of the reading.";
    }
    double ratio = tuned / (tuned + off);
    double slope = Math.pow(ratio, EXPONENT);
    double least = Math.pow(ratio, EXPONENT - SPREAD);
    double most = Math.pow(ratio, EXPONENT + SPREAD);
    boolean isLong = off > 0;
    return "Expect a slope of about %s (%s to %s; common practice and simulation, no source) and, at one gap, a gap voltage %s negative by as much: vibration is shown too %s, so protection acts %s.%s"
        .formatted(
            Amounts.percent(slope - 1),
            Amounts.percent(least - 1),
            Amounts.percent(most - 1),
            isLong ? "less" : "more",
            isLong ? "small" : "large",
            isLong ? "late" : "early",
            setPoints(loop, slope));
  }

  private static String setPoints(LoopView loop, double slope) {
    if (loop.place().measures() != Measures.RADIAL_VIBRATION) {
      return "";
    }
    return loop.place().channels().stream()
        .filter(channel -> channel.danger().high() != null)
        .map(channel -> " " + setPoint(channel, slope))
        .distinct()
        .collect(Collectors.joining());
  }

  private static String setPoint(ChannelView channel, double slope) {
    BigDecimal danger = channel.danger().high();
    return danger == null
        ? ""
        : "Danger meant for %s acts at about %s."
            .formatted(channel.level(danger), acting(channel, danger, slope));
  }

  private static String acting(ChannelView channel, BigDecimal danger, double slope) {
    double acts = danger.doubleValue() / slope;
    return channel.levelUnit() == Unit.MIL
        ? Amounts.rounded(acts, 1) + " mil"
        : Amounts.rounded(acts, 0) + " µm";
  }
}
