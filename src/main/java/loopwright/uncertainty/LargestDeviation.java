package loopwright.uncertainty;

import java.util.Arrays;
import loopwright.curve.ShiftRule;

/**
 * Largest deviation from the straight line of the profile's slope, µm, the line placed by the
 * profile's shift rule. The slope is a definition, not a measurement, and has no uncertainty.
 *
 * <p>With rᵢ = gᵢ + 1000 Vᵢ/S the least-largest-deviation rule gives (max r − min r)/2: only the
 * two extreme readings fix the line and the result, so the derivative is ½ at the one and −½ at the
 * other (times 1000/S for volts). A shift of all gaps, or of all volts, cancels. The result has a
 * kink where another reading takes over as extreme. There the budget is only a linearisation: when
 * several readings share an extreme within the uncertainty, noise alone makes the largest deviation
 * larger, and the Monte Carlo check is the better guide ({@link #contenders}). Of readings that
 * share an extreme to the last digits the pair with the larger distance is taken, which a scale
 * error moves most.
 *
 * @param slope mV/µm of the profile's line
 * @param rule that places it
 */
record LargestDeviation(double slope, ShiftRule rule) implements Measurand {
  /** µm; readings nearer than this to an extreme share it but for rounding. */
  private static final double SHARED = 1e-6;

  @Override
  public String name() {
    return "largest deviation from the straight line";
  }

  @Override
  public String unit() {
    return "µm";
  }

  @Override
  public double value(Readings readings) {
    double[] residuals = residuals(readings);
    double shift = rule.shift(residuals);
    return Arrays.stream(residuals).map(r -> Math.abs(r - shift)).max().orElseThrow();
  }

  @Override
  public Gradient gradient(Readings readings) {
    double[] residuals = residuals(readings);
    double[] byGap =
        switch (rule) {
          case MINIMAX -> halfDifference(residuals);
          case MEAN -> fromMean(residuals);
        };
    double[] byVolts = Arrays.stream(byGap).map(c -> c * 1000 / slope).toArray();
    return new Gradient(byGap, byVolts);
  }

  /**
   * How many readings lie within that distance of either extreme, the extremes themselves included;
   * more than two mean that the kink is within reach.
   *
   * @param reachMicrometres for instance the expanded uncertainty
   */
  long contenders(Readings readings, double reachMicrometres) {
    double[] residuals = residuals(readings);
    double most = Arrays.stream(residuals).max().orElseThrow();
    double least = Arrays.stream(residuals).min().orElseThrow();
    return Arrays.stream(residuals)
        .filter(r -> r >= most - reachMicrometres || r <= least + reachMicrometres)
        .count();
  }

  private double[] residuals(Readings readings) {
    double[] residuals = new double[readings.gaps().length];
    Arrays.setAll(residuals, i -> readings.gaps()[i] + 1000 * readings.volts()[i] / slope);
    return residuals;
  }

  private static double[] halfDifference(double[] residuals) {
    double most = Arrays.stream(residuals).max().orElseThrow();
    double least = Arrays.stream(residuals).min().orElseThrow();
    int high = -1;
    int low = -1;
    for (int i = 0; i < residuals.length; i++) {
      for (int j = 0; j < residuals.length; j++) {
        boolean extremes = residuals[i] >= most - SHARED && residuals[j] <= least + SHARED;
        if (extremes && i != j && (high < 0 || Math.abs(i - j) > Math.abs(high - low))) {
          high = i;
          low = j;
        }
      }
    }
    double[] byGap = new double[residuals.length];
    byGap[high] = 0.5;
    byGap[low] = -0.5;
    return byGap;
  }

  private static double[] fromMean(double[] residuals) {
    double mean = Arrays.stream(residuals).average().orElseThrow();
    int farthest = 0;
    for (int i = 1; i < residuals.length; i++) {
      if (Math.abs(residuals[i] - mean) > Math.abs(residuals[farthest] - mean) + SHARED) {
        farthest = i;
      }
    }
    double sign = residuals[farthest] < mean ? -1 : 1;
    double[] byGap = new double[residuals.length];
    Arrays.fill(byGap, -sign / residuals.length);
    byGap[farthest] += sign;
    return byGap;
  }
}
