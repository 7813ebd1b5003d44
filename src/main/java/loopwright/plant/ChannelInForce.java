package loopwright.plant;

import java.math.BigDecimal;
import loopwright.matching.ChannelView;
import loopwright.matching.Range;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import org.jspecify.annotations.Nullable;

/**
 * What a channel does at a moment, put together from what it was told and what was read out of it.
 *
 * @param name rack, slot and channel
 * @param levelUnit of full scale, alert and danger
 */
public record ChannelInForce(
    String name,
    @Nullable ScaleFactor scaleFactor,
    String scaleReason,
    Limits fullScale,
    Limits alert,
    Limits danger,
    Unit levelUnit,
    Limits okVolts,
    @Nullable BigDecimal zeroVolts,
    @Nullable Direction positive) {

  /** As the rules see it. */
  ChannelView view() {
    return new ChannelView(
        name,
        scaleFactor,
        scaleReason,
        range(fullScale),
        range(danger),
        levelUnit,
        range(okVolts),
        zeroVolts,
        positive == null ? null : positive == Direction.TOWARD);
  }

  private static Range range(Limits limits) {
    @Nullable BigDecimal low = limits.low();
    return new Range(low, limits.high());
  }
}
