package loopwright.uncertainty;

import java.util.Arrays;
import loopwright.numerics.StraightLine;

/**
 * Slope of the least-squares line through the readings, mV/µm, positive when the output gets more
 * negative with the gap: b = −1000 Sgv/Sgg. Gaps count as measured too: ∂b/∂gⱼ = −1000 (Vⱼ −
 * V̄)/Sgg − 2 b (gⱼ − ḡ)/Sgg.
 */
record LeastSquaresSlope() implements Measurand {

  @Override
  public String name() {
    return "least-squares slope";
  }

  @Override
  public String unit() {
    return "mV/µm";
  }

  @Override
  public double value(Readings readings) {
    return 0.0 - 1000 * StraightLine.fit(readings.gaps(), readings.volts()).slope();
  }

  @Override
  public Gradient gradient(Readings readings) {
    double slope = value(readings);
    double[] gap = aboutMean(readings.gaps());
    double[] volts = aboutMean(readings.volts());
    double squares = Arrays.stream(gap).map(g -> g * g).sum();
    double[] byGap = new double[gap.length];
    double[] byVolts = new double[gap.length];
    Arrays.setAll(byGap, j -> (-1000 * volts[j] - 2 * slope * gap[j]) / squares);
    Arrays.setAll(byVolts, j -> -1000 * gap[j] / squares);
    return new Gradient(byGap, byVolts);
  }

  private static double[] aboutMean(double[] values) {
    double mean = Arrays.stream(values).average().orElseThrow();
    return Arrays.stream(values).map(value -> value - mean).toArray();
  }
}
