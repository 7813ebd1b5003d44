package loopwright.numerics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Lines of one slope, each on its own level: y = aₖ + b · x, by ordinary least squares. With one
 * level it is the straight line.
 *
 * <p>Formulas: within each level k the means x̄ₖ and ȳₖ; b = Σ(x−x̄ₖ)(y−ȳₖ) / Σ(x−x̄ₖ)², aₖ = ȳₖ −
 * b·x̄ₖ, residual standard deviation s with n − K − 1 degrees of freedom, u(b) = s/√Σ(x−x̄ₖ)².
 *
 * @param residualStandardDeviation in the unit of y
 * @param count of all points
 * @see "Analysis of covariance with a common slope, for instance Snedecor and Cochran, Statistical
 *     Methods, 8th edition 1989, chapter 18 (from memory)"
 */
public record ParallelLines(
    double slope,
    double slopeStandardError,
    double residualStandardDeviation,
    int count,
    List<Level> levels) {

  /**
   * One of the lines.
   *
   * @param count of its points
   */
  public record Level(double meanX, double meanY, int count) {}

  public ParallelLines {
    levels = List.copyOf(levels);
  }

  /** Whether those points show a slope and a spread about it. */
  public static boolean fits(double[] x, int[] level) {
    int levels = 1 + Arrays.stream(level).max().orElse(0);
    return x.length - levels - 1 >= 1 && within(x, means(x, level, levels), level) > 0;
  }

  /**
   * Fits them.
   *
   * @param level of each point, from 0 on, without a gap
   * @throws IllegalArgumentException if {@link #fits} says no
   */
  public static ParallelLines fit(double[] x, double[] y, int[] level) {
    if (x.length != y.length || x.length != level.length || !fits(x, level)) {
      throw new IllegalArgumentException("Lines need more points than levels, and different x.");
    }
    int levels = 1 + Arrays.stream(level).max().orElse(0);
    double[] meanX = means(x, level, levels);
    double[] meanY = means(y, level, levels);
    double sxx = within(x, meanX, level);
    double sxy = 0;
    for (int i = 0; i < x.length; i++) {
      sxy += (x[i] - meanX[level[i]]) * (y[i] - meanY[level[i]]);
    }
    double slope = sxy / sxx;
    double squares = 0;
    for (int i = 0; i < x.length; i++) {
      double residual = y[i] - meanY[level[i]] - slope * (x[i] - meanX[level[i]]);
      squares += residual * residual;
    }
    double s = Math.sqrt(squares / (x.length - levels - 1));
    return new ParallelLines(
        slope, s / Math.sqrt(sxx), s, x.length, levels(level, levels, meanX, meanY));
  }

  private static List<Level> levels(int[] level, int levels, double[] meanX, double[] meanY) {
    List<Level> all = new ArrayList<>();
    for (int k = 0; k < levels; k++) {
      int of = k;
      int count = (int) Arrays.stream(level).filter(each -> each == of).count();
      all.add(new Level(meanX[k], meanY[k], count));
    }
    return all;
  }

  private static double[] means(double[] values, int[] level, int levels) {
    double[] sums = new double[levels];
    int[] counts = new int[levels];
    for (int i = 0; i < values.length; i++) {
      sums[level[i]] += values[i];
      counts[level[i]]++;
    }
    for (int k = 0; k < levels; k++) {
      sums[k] /= counts[k];
    }
    return sums;
  }

  private static double within(double[] x, double[] means, int[] level) {
    double sum = 0;
    for (int i = 0; i < x.length; i++) {
      sum += (x[i] - means[level[i]]) * (x[i] - means[level[i]]);
    }
    return sum;
  }

  /** n − K − 1. */
  public int degreesOfFreedom() {
    return count - levels.size() - 1;
  }

  /** The fitted y of that level at that x. */
  public double at(double x, int level) {
    Level line = levels.get(level);
    return line.meanY() + slope * (x - line.meanX());
  }

  /** Standard error of the fitted y: of the line, not of a new observation. */
  public double standardErrorAt(double x, int level) {
    Level line = levels.get(level);
    double mean = residualStandardDeviation / Math.sqrt(line.count());
    return Math.hypot(mean, slopeStandardError * (x - line.meanX()));
  }

  /**
   * Probability of a slope at least this far from zero if there were none (two-sided Student test).
   */
  public double slopeSignificance() {
    if (slope == 0) {
      return 1;
    }
    double t = Math.abs(slope) / slopeStandardError;
    return 2 * TDistribution.of(degreesOfFreedom()).survivalProbability(t);
  }

  /**
   * Half-width of the two-sided confidence interval of the slope.
   *
   * @param confidence above 0 and below 1, for instance 0.95
   */
  public double slopeHalfWidth(double confidence) {
    return TDistribution.of(degreesOfFreedom()).inverseSurvivalProbability((1 - confidence) / 2)
        * slopeStandardError;
  }
}
