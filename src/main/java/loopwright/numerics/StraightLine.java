package loopwright.numerics;

import java.util.Arrays;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * The straight line y = intercept + slope · x of ordinary least squares, with what its residuals
 * say about it. All values are in the units of the x and y that were given.
 *
 * <p>Formulas: slope b = Σ(x−x̄)(y−ȳ) / Σ(x−x̄)², intercept a = ȳ − b·x̄, residual standard
 * deviation s with n − 2 degrees of freedom, u(b) = s/√Σ(x−x̄)², u(a) = s·√(1/n + x̄²/Σ(x−x̄)²),
 * u(ŷ(x)) = s·√(1/n + (x−x̄)²/Σ(x−x̄)²). The errors of y are taken as independent and equally
 * large; x as known.
 *
 * @param slope y per x
 * @param intercept y at x = 0
 * @param slopeStandardError 0 when the points lie on the line exactly
 * @param interceptStandardError of the same kind
 * @param correlation of the estimates of intercept and slope, −1 to 1
 * @param residualStandardDeviation in the unit of y
 * @param count of the points
 * @param meanX of the points
 * @see "JCGM 100:2008, H.3, equations (H.13)"
 */
public record StraightLine(
    double slope,
    double intercept,
    double slopeStandardError,
    double interceptStandardError,
    double correlation,
    double residualStandardDeviation,
    int count,
    double meanX) {

  /** Fewest points that show a spread about their line. */
  public static final int FEWEST = 3;

  private static final double LARGEST = 1e100;

  /**
   * Fits the line.
   *
   * @throws IllegalArgumentException if the arrays differ in length, hold fewer than three points,
   *     hold a value that is not finite or beyond 1e100, or if all x are equal
   */
  public static StraightLine fit(double[] x, double[] y) {
    refuseUnfit(x, y);
    double meanX = mean(x);
    double meanY = mean(y);
    double sxx = 0;
    double sxy = 0;
    for (int i = 0; i < x.length; i++) {
      sxx += (x[i] - meanX) * (x[i] - meanX);
      sxy += (x[i] - meanX) * (y[i] - meanY);
    }
    if (sxx == 0) {
      throw new IllegalArgumentException("A line needs at least two different x.");
    }
    return about(x, y, meanX, meanY, sxx, sxy / sxx);
  }

  private static StraightLine about(
      double[] x, double[] y, double meanX, double meanY, double sxx, double slope) {
    double squares = 0;
    for (int i = 0; i < x.length; i++) {
      double residual = (y[i] - meanY) - slope * (x[i] - meanX);
      squares += residual * residual;
    }
    int n = x.length;
    double s = Math.sqrt(squares / (n - 2));
    double atZero = Math.sqrt(1.0 / n + meanX * meanX / sxx);
    return new StraightLine(
        slope,
        meanY - slope * meanX,
        s / Math.sqrt(sxx),
        s * atZero,
        -meanX / Math.sqrt(sxx) / atZero,
        s,
        n,
        meanX);
  }

  /** n − 2. */
  public int degreesOfFreedom() {
    return count - 2;
  }

  /** The fitted y at that x. */
  public double at(double x) {
    return intercept + slope * x;
  }

  /** Standard error of the fitted y at that x: of the line, not of a new observation. */
  public double standardErrorAt(double x) {
    double mean = residualStandardDeviation / Math.sqrt(count);
    return Math.hypot(mean, slopeStandardError * (x - meanX));
  }

  /**
   * Probability of a slope at least this far from zero if there were none (two-sided Student test).
   * Points exactly on a sloping line give 0, on a level one 1.
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
    if (!(confidence > 0 && confidence < 1)) {
      throw new IllegalArgumentException("A confidence lies between 0 and 1.");
    }
    double t =
        TDistribution.of(degreesOfFreedom()).inverseSurvivalProbability((1 - confidence) / 2);
    return t * slopeStandardError;
  }

  private static void refuseUnfit(double[] x, double[] y) {
    if (x.length != y.length) {
      throw new IllegalArgumentException("As many x as y are needed.");
    }
    if (x.length < FEWEST) {
      throw new IllegalArgumentException("A line with its spread needs at least three points.");
    }
    if (!Arrays.stream(x).allMatch(StraightLine::fits)
        || !Arrays.stream(y).allMatch(StraightLine::fits)) {
      throw new IllegalArgumentException("A line needs finite numbers, at most 1e100.");
    }
  }

  private static boolean fits(double value) {
    return Math.abs(value) <= LARGEST;
  }

  /** Two passes: the rest that rounding left in the first is given back in the second. */
  private static double mean(double[] values) {
    double first = Arrays.stream(values).sum() / values.length;
    return first + Arrays.stream(values).map(v -> v - first).sum() / values.length;
  }
}
