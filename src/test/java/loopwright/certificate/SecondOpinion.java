package loopwright.certificate;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.RealDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.apache.commons.math3.util.FastMath;

/**
 * The results of one run worked out a second time, from the raw points and with another library
 * (Commons Math 3): regression, Student's t, and uncertainties as J Σ Jᵀ with a Jacobian by central
 * differences and one covariance matrix over all gaps and outputs. Shares no code with the program.
 *
 * @param gaps µm
 * @param volts negative
 * @param slope of the profile's line, mV/µm
 */
record SecondOpinion(double[] gaps, double[] volts, double slope, List<Source> sources) {

  /** One source: in the gaps or the outputs, each reading its own or a share of all. */
  record Source(String name, boolean inGap, boolean share, double u, double degrees) {}

  /** A result with its uncertainty. */
  record Stated(double value, double u, double degrees, double[] contributions) {
    double k() {
      return distribution().inverseCumulativeProbability(0.975);
    }

    double expanded() {
      return k() * u;
    }

    RealDistribution distribution() {
      return Double.isInfinite(degrees)
          ? new NormalDistribution()
          : new TDistribution(FastMath.floor(degrees + 1e-9));
    }

    double probability(double low, double high) {
      double above = distribution().cumulativeProbability((high - value) / u);
      return Double.isInfinite(low)
          ? above
          : above - distribution().cumulativeProbability((low - value) / u);
    }
  }

  private interface Result {
    double of(double[] gaps, double[] volts);
  }

  static double isf(double[] g, double[] v, int i) {
    return 1000 * (v[i - 1] - v[i]) / (g[i] - g[i - 1]);
  }

  static double asf(double[] g, double[] v) {
    return 1000 * (v[0] - v[v.length - 1]) / (g[g.length - 1] - g[0]);
  }

  static SimpleRegression regression(double[] g, double[] v) {
    SimpleRegression regression = new SimpleRegression();
    IntStream.range(0, g.length).forEach(i -> regression.addData(g[i], -1000 * v[i]));
    return regression;
  }

  double[] deviations() {
    return deviations(gaps, volts);
  }

  private double[] deviations(double[] g, double[] v) {
    double[] off = new double[g.length];
    Arrays.setAll(off, i -> g[i] + 1000 * v[i] / slope);
    double middle =
        (Arrays.stream(off).max().orElseThrow() + Arrays.stream(off).min().orElseThrow()) / 2;
    return Arrays.stream(off).map(o -> o - middle).toArray();
  }

  double largestDeviation(double[] g, double[] v) {
    return Arrays.stream(deviations(g, v)).map(FastMath::abs).max().orElseThrow();
  }

  Stated statedIsf(int i) {
    return stated((g, v) -> isf(g, v, i));
  }

  Stated statedAsf() {
    return stated(SecondOpinion::asf);
  }

  Stated statedDsl() {
    return stated(this::largestDeviation);
  }

  private Stated stated(Result result) {
    double[] contributions =
        sources.stream().mapToDouble(source -> FastMath.sqrt(variance(result, source))).toArray();
    double u = FastMath.sqrt(Arrays.stream(contributions).map(c -> c * c).sum());
    double sum =
        IntStream.range(0, contributions.length)
            .mapToDouble(i -> FastMath.pow(contributions[i], 4) / sources.get(i).degrees())
            .sum();
    double degrees = sum == 0 ? Double.POSITIVE_INFINITY : FastMath.pow(u, 4) / sum;
    return new Stated(result.of(gaps, volts), u, degrees, contributions);
  }

  private double variance(Result result, Source source) {
    RealMatrix jacobian = jacobian(result);
    return jacobian.multiply(covariance(source)).multiply(jacobian.transpose()).getEntry(0, 0);
  }

  private RealMatrix covariance(Source source) {
    int n = gaps.length;
    RealMatrix sigma = new Array2DRowRealMatrix(2 * n, 2 * n);
    double[] values = source.inGap() ? gaps : volts;
    int first = source.inGap() ? 0 : n;
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        double both = source.share() ? values[i] * values[j] : i == j ? 1 : 0;
        sigma.setEntry(first + i, first + j, source.u() * source.u() * both);
      }
    }
    return sigma;
  }

  private RealMatrix jacobian(Result result) {
    int n = gaps.length;
    double[][] row = new double[1][2 * n];
    for (int i = 0; i < n; i++) {
      row[0][i] = derivative(result, i, true, 1e-4);
      row[0][n + i] = derivative(result, i, false, 1e-6);
    }
    return new Array2DRowRealMatrix(row);
  }

  private double derivative(Result result, int i, boolean inGap, double step) {
    ToDoubleFunction<Double> moved =
        by -> {
          double[] g = gaps.clone();
          double[] v = volts.clone();
          (inGap ? g : v)[i] += by;
          return result.of(g, v);
        };
    return (moved.applyAsDouble(step) - moved.applyAsDouble(-step)) / (2 * step);
  }
}
