package loopwright.cause;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/**
 * An unknown as a row of values with weights that add up to 1: integrals over it are sums. Evenly
 * spaced and fixed, so that answers are reproducible and move smoothly with what was measured.
 */
record Grid(double[] values, double[] weights) {
  private static final double REACH = 2.6;

  static Grid certain(double value) {
    return new Grid(new double[] {value}, new double[] {1});
  }

  /** Normal, over ± 2.6 standard deviations. */
  static Grid normal(double mean, double deviation, int count) {
    return of(
        mean - REACH * deviation,
        mean + REACH * deviation,
        count,
        x -> Math.exp(-0.5 * Math.pow((x - mean) / deviation, 2)));
  }

  /** The negative half of a normal distribution about zero. */
  static Grid belowZero(double deviation, int count) {
    double step = REACH * deviation / count;
    return of(
        -REACH * deviation, -step / 2, count, x -> Math.exp(-0.5 * Math.pow(x / deviation, 2)));
  }

  /** Evenly spaced values, weighted by a density. */
  static Grid of(double from, double to, int count, DoubleUnaryOperator density) {
    double[] values =
        IntStream.range(0, count).mapToDouble(i -> from + i * (to - from) / (count - 1)).toArray();
    return weighted(values, density);
  }

  /** Those values, weighted by a density. */
  static Grid weighted(double[] values, DoubleUnaryOperator density) {
    double[] weights = Arrays.stream(values).map(density).toArray();
    double sum = Arrays.stream(weights).sum();
    return new Grid(values, Arrays.stream(weights).map(w -> w / sum).toArray());
  }

  /** Without the values below a bound. */
  Grid above(double bound) {
    int[] kept = IntStream.range(0, values.length).filter(i -> values[i] >= bound).toArray();
    double sum = Arrays.stream(kept).mapToDouble(i -> weights[i]).sum();
    return new Grid(
        Arrays.stream(kept).mapToDouble(i -> values[i]).toArray(),
        Arrays.stream(kept).mapToDouble(i -> weights[i] / sum).toArray());
  }

  int size() {
    return values.length;
  }

  /** Distance between values. */
  double step() {
    return values[1] - values[0];
  }
}
