package loopwright.matching.rules;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.matching.ChannelView;
import loopwright.matching.LearntLaws.LearntLaw;
import loopwright.matching.LoopView;
import loopwright.matching.Measures;
import loopwright.units.Length;
import loopwright.units.Unit;

/**
 * What a loop out of balance does to what the monitor shows: S_t = k · S with k = (system length /
 * fitted length)^n, n = 1.0 ± 0.35 (common practice and simulation, no source) or as confirmed
 * lengths of the family taught. Vibration is shown times k, so a set point A acts at A/k. More than
 * 25 % of the system length off is beyond the model.
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
    Optional<LearntLaw> learnt =
        loop.family().flatMap(family -> loop.families().laws().of(family.code()));
    double exponent = learnt.map(LearntLaw::exponent).orElse(EXPONENT);
    double spread = learnt.map(LearntLaw::uncertainty).orElse(SPREAD);
    double slope = Math.pow(ratio, exponent);
    double least = Math.pow(ratio, exponent - spread);
    double most = Math.pow(ratio, exponent + spread);
    boolean isLong = off > 0;
    return "Expect a slope of about %s (%s to %s; %s) and, at one gap, a gap voltage %s negative by as much: vibration is shown too %s, so protection acts %s.%s"
        .formatted(
            Amounts.percent(slope - 1),
            Amounts.percent(least - 1),
            Amounts.percent(most - 1),
            learnt.map(ExpectedEffect::basis).orElse("common practice and simulation, no source"),
            isLong ? "less" : "more",
            isLong ? "small" : "large",
            isLong ? "late" : "early",
            setPoints(loop, slope));
  }

  private static String basis(LearntLaw law) {
    return law.cases() == 1
        ? "learnt from one confirmed length of this family"
        : "learnt from " + law.cases() + " confirmed lengths of this family";
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
