package loopwright.uncertainty;

import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;

/**
 * Propagation of distributions: the readings are disturbed by errors drawn from their sources, many
 * times, and the result computed anew each time. It checks what the budget linearised.
 *
 * @param budget it checks
 * @param trials how many draws
 * @param mean of the results
 * @param standardDeviation of the results
 * @param low lower end of the probabilistically symmetric 95 % interval
 * @param high upper end
 * @see "JCGM 101:2008, 7"
 */
public record MonteCarlo(
    Budget budget, int trials, double mean, double standardDeviation, double low, double high) {
  private static final String GENERATOR = "L64X128MixRandom";
  private static final int FEWEST = 1000;

  static MonteCarlo of(
      Measurand measurand, Readings readings, List<ErrorSource> sources, int trials, long seed) {
    if (trials < FEWEST) {
      throw new IllegalArgumentException("A Monte Carlo check takes at least 1,000 trials.");
    }
    RandomGenerator random = RandomGeneratorFactory.of(GENERATOR).create(seed);
    double[] results = new double[trials];
    Arrays.setAll(results, i -> measurand.value(disturbed(readings, sources, random)));
    return of(Budget.of(measurand, readings, sources), results);
  }

  private static MonteCarlo of(Budget budget, double[] results) {
    double mean = Arrays.stream(results).average().orElseThrow();
    double squares = Arrays.stream(results).map(r -> (r - mean) * (r - mean)).sum();
    Arrays.sort(results);
    int tail = (int) Math.round(results.length * (1 - Budget.COVERAGE) / 2);
    return new MonteCarlo(
        budget,
        results.length,
        mean,
        Math.sqrt(squares / (results.length - 1)),
        results[tail],
        results[results.length - 1 - tail]);
  }

  private static Readings disturbed(
      Readings readings, List<ErrorSource> sources, RandomGenerator random) {
    double[] gaps = readings.gaps().clone();
    double[] volts = readings.volts().clone();
    for (ErrorSource source : sources) {
      double[] disturbed = source.quantity() == Quantity.GAP ? gaps : volts;
      source.disturb(disturbed, readings.of(source.quantity()), random);
    }
    return new Readings(gaps, volts);
  }

  /**
   * Does the budget's interval agree with this one, both ends, to half a unit in the second digit
   * of the standard uncertainty?
   *
   * @see "JCGM 101:2008, 7.9.2 and 8.1"
   */
  public boolean agrees() {
    double expanded = budget.expandedUncertainty();
    double tolerance = tolerance(budget.standardUncertainty());
    return Math.abs(budget.estimate() - expanded - low) <= tolerance
        && Math.abs(budget.estimate() + expanded - high) <= tolerance;
  }

  private static double tolerance(double standardUncertainty) {
    return standardUncertainty == 0
        ? 0
        : Math.pow(10, Math.floor(Math.log10(standardUncertainty)) - 1) / 2;
  }
}
