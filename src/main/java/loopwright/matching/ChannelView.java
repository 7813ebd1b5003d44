package loopwright.matching;

import java.math.BigDecimal;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.jspecify.annotations.Nullable;

/**
 * A monitor channel as the rules see it: what was found in it, else what was approved.
 *
 * @param name rack, slot and channel
 * @param scaleReason why the scale factor is not the nominal one; empty if nobody said
 * @param fullScale in {@code levelUnit}; peak to peak for vibration, from zero for positions
 * @param danger in {@code levelUnit}, as {@code fullScale}
 * @param levelUnit µm or mil
 * @param okVolts V, the more negative one is low
 * @param zeroVolts V that stands for position zero
 * @param positiveTowardProbe whether movement toward the probe counts as positive
 */
public record ChannelView(
    String name,
    @Nullable ScaleFactor scaleFactor,
    String scaleReason,
    Range fullScale,
    Range danger,
    Unit levelUnit,
    Range okVolts,
    @Nullable BigDecimal zeroVolts,
    @Nullable Boolean positiveTowardProbe) {

  /** A level of this channel in µm. */
  public double micrometres(BigDecimal level) {
    return levelUnit.toCanonical(level).doubleValue();
  }

  /** A level as it was entered: {@code 130 µm}. */
  public String level(BigDecimal level) {
    return loopwright.units.Numbers.plain(level).replace('-', '\u2212') + " " + levelUnit.symbol();
  }
}
