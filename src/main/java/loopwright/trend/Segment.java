package loopwright.trend;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.numerics.ParallelLines;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Observations that were taken with the same parts, with their line: one slope for all, and its own
 * level after each adjustment. An observation far off the line is marked; it stays in the fit and
 * in the picture, for nobody knows yet which one is wrong.
 *
 * @param name of it
 * @param observations oldest first
 * @param least so far off the line a value must be to be called an outlier
 * @param line value over years; empty where too few observations show no spread
 */
public record Segment(
    String name, List<Observation> observations, double least, Optional<ParallelLines> line) {
  /** Two-sided level of the outlier test, shared among the observations (Bonferroni). */
  private static final double LEVEL = 0.01;

  private static final int FEWEST_FOR_OUTLIERS = 5;

  public Segment {
    observations = List.copyOf(observations);
  }

  static Segment of(String name, List<Observation> observations, double least) {
    return new Segment(name, observations, least, fit(observations));
  }

  private static Optional<ParallelLines> fit(List<Observation> observations) {
    double[] years = observations.stream().mapToDouble(Observation::years).toArray();
    double[] values = observations.stream().mapToDouble(Observation::value).toArray();
    int[] levels = observations.stream().mapToInt(one -> place(observations, one)).toArray();
    return ParallelLines.fits(years, levels)
        ? Optional.of(ParallelLines.fit(years, values, levels))
        : Optional.empty();
  }

  /** Which of the levels that occur, from 0 on, is that of the observation. */
  private static int place(List<Observation> observations, Observation one) {
    return levels(observations).indexOf(one.level());
  }

  private static List<Integer> levels(List<Observation> observations) {
    return observations.stream().map(Observation::level).distinct().sorted().toList();
  }

  /** Observations between two adjustments, one list each, in their order. */
  public List<List<Observation>> byLevel() {
    return levels(observations).stream()
        .map(level -> observations.stream().filter(one -> one.level() == level).toList())
        .toList();
  }

  /** The line's value at that time on the level of an observation. */
  public double lineAt(double years, Observation onLevelOf) {
    return line.orElseThrow().at(years, place(observations, onLevelOf));
  }

  /**
   * The observations whose externally studentised residual t = r √((f − 1)/(S (1 − h) − r²)) is
   * beyond Student's t for f − 1 degrees of freedom at 1 % shared among all; f are the degrees of
   * freedom of the fit, S is the sum of squares, h the leverage. None of fewer than five.
   *
   * @see "Cook and Weisberg, Residuals and Influence in Regression, 1982, 2.2 (from memory)"
   */
  public List<Observation> outliers() {
    int n = observations.size();
    if (line.isEmpty() || line.get().degreesOfFreedom() < FEWEST_FOR_OUTLIERS - 2) {
      return List.of();
    }
    double limit =
        TDistribution.of(line.get().degreesOfFreedom() - 1.0)
            .inverseSurvivalProbability(LEVEL / n / 2);
    List<Observation> outliers = new ArrayList<>();
    for (Observation one : observations) {
      double off = Math.abs(one.value() - lineAt(one.years(), one));
      if (off >= least && studentised(line.get(), one) > limit) {
        outliers.add(one);
      }
    }
    return outliers;
  }

  private double studentised(ParallelLines line, Observation one) {
    double residual = one.value() - lineAt(one.years(), one);
    double variance = square(line.residualStandardDeviation());
    if (variance == 0 || residual == 0) {
      return 0;
    }
    double leverage =
        square(line.standardErrorAt(one.years(), place(observations, one))) / variance;
    double freedom = line.degreesOfFreedom();
    double left = variance * freedom * (1 - leverage) - residual * residual;
    return left <= 0
        ? Double.POSITIVE_INFINITY
        : Math.abs(residual) * Math.sqrt((freedom - 1) / left);
  }

  private static double square(double x) {
    return x * x;
  }

  /**
   * Half-width of the confidence band of the line, not of a new observation.
   *
   * @param onLevelOf an observation of the level that is asked for
   * @param confidence two-sided, for instance 0.95
   */
  public double halfWidthAt(double years, Observation onLevelOf, double confidence) {
    ParallelLines fitted = line.orElseThrow();
    double t =
        TDistribution.of(fitted.degreesOfFreedom())
            .inverseSurvivalProbability((1 - confidence) / 2);
    return t * fitted.standardErrorAt(years, place(observations, onLevelOf));
  }

  /** Whether a slope as steep would come by chance in at most 5 % of cases. */
  public boolean drifts() {
    return line.filter(l -> l.slopeSignificance() <= 0.05).isPresent();
  }
}
