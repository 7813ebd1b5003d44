package loopwright.trend;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.numerics.StraightLine;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Observations that were taken with the same parts, with their line. An observation far off the
 * line is marked; it stays in the fit and in the picture, for nobody knows yet which one is wrong.
 *
 * @param name of it
 * @param observations oldest first
 * @param least so far off the line a value must be to be called an outlier
 * @param line value over years; empty where fewer than three moments show no spread
 */
public record Segment(
    String name, List<Observation> observations, double least, Optional<StraightLine> line) {
  /** Two-sided level of the outlier test, shared among the observations (Bonferroni). */
  private static final double LEVEL = 0.01;

  private static final int FEWEST_FOR_OUTLIERS = 5;

  public Segment {
    observations = List.copyOf(observations);
  }

  static Segment of(String name, List<Observation> observations, double least) {
    long moments = observations.stream().map(Observation::at).distinct().count();
    boolean fits = observations.size() >= StraightLine.FEWEST && moments >= 2;
    return new Segment(
        name, observations, least, fits ? Optional.of(fit(observations)) : Optional.empty());
  }

  private static StraightLine fit(List<Observation> observations) {
    return StraightLine.fit(
        observations.stream().mapToDouble(Observation::years).toArray(),
        observations.stream().mapToDouble(Observation::value).toArray());
  }

  /**
   * The observations whose externally studentised residual t = r √((n − 3)/(S (1 − h) − r²)) is
   * beyond Student's t for n − 3 degrees of freedom at 1 % shared among all; S is the sum of
   * squares, h the leverage. None of fewer than five.
   *
   * @see "Cook and Weisberg, Residuals and Influence in Regression, 1982, 2.2 (from memory)"
   */
  public List<Observation> outliers() {
    int n = observations.size();
    if (line.isEmpty() || n < FEWEST_FOR_OUTLIERS) {
      return List.of();
    }
    double limit = TDistribution.of(n - 3).inverseSurvivalProbability(LEVEL / n / 2);
    List<Observation> outliers = new ArrayList<>();
    for (Observation one : observations) {
      double off = Math.abs(one.value() - line.get().at(one.years()));
      if (off >= least && studentised(line.get(), one, n) > limit) {
        outliers.add(one);
      }
    }
    return outliers;
  }

  private static double studentised(StraightLine line, Observation one, int n) {
    double residual = one.value() - line.at(one.years());
    double variance = line.residualStandardDeviation() * line.residualStandardDeviation();
    if (variance == 0) {
      return 0;
    }
    double leverage = square(line.standardErrorAt(one.years())) / variance;
    double left = variance * (n - 2) * (1 - leverage) - residual * residual;
    return left <= 0 ? Double.POSITIVE_INFINITY : Math.abs(residual) * Math.sqrt((n - 3) / left);
  }

  private static double square(double x) {
    return x * x;
  }

  /**
   * Half-width of the confidence band of the line, not of a new observation.
   *
   * @param confidence two-sided, for instance 0.95
   */
  public double halfWidthAt(double years, double confidence) {
    StraightLine fitted = line.orElseThrow();
    double t =
        TDistribution.of(fitted.degreesOfFreedom())
            .inverseSurvivalProbability((1 - confidence) / 2);
    return t * fitted.standardErrorAt(years);
  }

  /** Whether a slope as steep would come by chance in at most 5 % of cases. */
  public boolean drifts() {
    return line.filter(l -> l.slopeSignificance() <= 0.05).isPresent();
  }
}
