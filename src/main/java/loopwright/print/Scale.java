package loopwright.print;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;

/**
 * From values to coordinates along one axis. A value beyond the axis is put on its end, never
 * outside the drawing.
 *
 * @param low value at {@code atLow}
 * @param high value at {@code atHigh}
 */
record Scale(double low, double high, double atLow, double atHigh) {
  private static final double[] STEPS = {1, 2, 2.5, 5, 10};

  /** Refuses an axis without length or with an end that is not finite. */
  Scale {
    if (!Double.isFinite(low) || !Double.isFinite(high) || !(low < high)) {
      throw new IllegalArgumentException("An axis rises from " + low + " to " + high + "?");
    }
  }

  /** An axis from the least to the most of these values, with a share of empty room at each end. */
  static Scale around(double least, double most, double room, double atLow, double atHigh) {
    double length = most - least;
    double margin = length > 0 ? room * length : Math.max(1, Math.abs(most) * 0.1);
    return new Scale(least - margin, most + margin, atLow, atHigh);
  }

  double at(double value) {
    double inside = Math.max(low, Math.min(high, value));
    return atLow + (inside - low) / (high - low) * (atHigh - atLow);
  }

  boolean shows(double value) {
    return value >= low && value <= high;
  }

  /** Round values on the axis, about as many as wanted. */
  List<BigDecimal> ticks(int wanted) {
    BigDecimal step = step((high - low) / wanted);
    List<BigDecimal> ticks = new ArrayList<>();
    BigDecimal tick = BigDecimal.valueOf(Math.ceil(low / step.doubleValue() - 1e-9)).multiply(step);
    while (tick.doubleValue() <= high * (1 + Math.signum(high) * 1e-12)) {
      ticks.add(tick.signum() == 0 ? BigDecimal.ZERO : tick.stripTrailingZeros());
      tick = tick.add(step);
    }
    return ticks;
  }

  /** The round step nearest above: 1, 2, 2.5 or 5 times a power of ten. */
  private static BigDecimal step(double rough) {
    int exponent = (int) Math.floor(Math.log10(rough));
    double power = Math.pow(10, exponent);
    double best = STEPS[STEPS.length - 1];
    for (double step : STEPS) {
      if (step * power >= rough * (1 - 1e-9)) {
        best = step;
        break;
      }
    }
    return BigDecimal.valueOf(best)
        .multiply(BigDecimal.ONE.scaleByPowerOfTen(exponent), MathContext.DECIMAL64);
  }
}
