package loopwright.matching.rules;

import java.math.BigDecimal;
import java.util.Optional;
import loopwright.matching.ChannelView;
import loopwright.units.ScaleFactor;

/**
 * How a channel turns volts into a position: shown = s · (V − V_zero) / S_c, so that a position x
 * is shown at V = V_zero + s · x · S_c, with s = +1 where movement toward the probe counts as
 * positive (closer is less negative), else −1. Positions count from zero; the float is already in
 * them.
 *
 * @param zeroVolts V
 * @param sign +1 or −1
 * @param millivoltsPerMicrometre as told to the channel
 */
record AxialScale(double zeroVolts, int sign, double millivoltsPerMicrometre) {

  /** Empty while zero voltage, direction or scale factor is not known. */
  static Optional<AxialScale> of(ChannelView channel) {
    BigDecimal zero = channel.zeroVolts();
    Boolean toward = channel.positiveTowardProbe();
    ScaleFactor scale = channel.scaleFactor();
    return zero == null || toward == null || scale == null
        ? Optional.empty()
        : Optional.of(
            new AxialScale(zero.doubleValue(), toward ? 1 : -1, scale.millivoltsPerMicrometre()));
  }

  /** V at which a position, µm from zero, is shown. */
  double voltsAt(double micrometres) {
    return zeroVolts + sign * micrometres * millivoltsPerMicrometre / 1000;
  }
}
