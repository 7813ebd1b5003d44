package loopwright.uncertainty;

import java.util.Arrays;
import java.util.random.RandomGenerator;

/**
 * A source of error in readings: a component of the uncertainty budget.
 *
 * @param name in words, for instance "micrometer scale"
 * @param quantity the error sits in
 * @param spread how it acts on the readings
 * @param distribution of the error
 * @param standardUncertainty in the unit of the quantity; with {@link Spread#SAME_SHARE} a plain
 *     ratio; zero or more
 * @param degreesOfFreedom of that standard uncertainty, at least 1, infinite where it is taken as
 *     known; finite only for a normal distribution
 */
public record ErrorSource(
    String name,
    Quantity quantity,
    Spread spread,
    Distribution distribution,
    double standardUncertainty,
    double degreesOfFreedom) {

  /**
   * Refuses an uncertainty that is negative or not finite, and fewer than one degree of freedom.
   */
  public ErrorSource {
    if (!(standardUncertainty >= 0 && standardUncertainty < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException("A standard uncertainty is zero or more and finite.");
    }
    if (!(degreesOfFreedom >= 1)) {
      throw new IllegalArgumentException("An uncertainty has at least one degree of freedom.");
    }
    if (distribution != Distribution.NORMAL && degreesOfFreedom != Double.POSITIVE_INFINITY) {
      throw new IllegalArgumentException("The limits of that distribution are taken as known.");
    }
  }

  /** A normal error whose standard uncertainty is taken as known. */
  public static ErrorSource known(
      String name, Quantity quantity, Spread spread, double standardUncertainty) {
    return new ErrorSource(
        name, quantity, spread, Distribution.NORMAL, standardUncertainty, Double.POSITIVE_INFINITY);
  }

  /** The unit of the standard uncertainty; a ratio has none and is written 1. */
  public String unit() {
    return spread == Spread.SAME_SHARE ? "1" : quantity.unit().symbol();
  }

  /**
   * Covariances of this source's errors in some readings' values.
   *
   * @param values of the quantity, in its unit
   */
  Covariance covariance(double[] values) {
    double variance = standardUncertainty * standardUncertainty;
    return switch (spread) {
      case EACH_READING -> Covariance.independent(variance, values.length);
      case SAME_OFFSET -> Covariance.common(variance, filled(1, values.length));
      case SAME_SHARE -> Covariance.common(variance, values);
    };
  }

  /** Adds one draw of this source's errors to the values. */
  void disturb(double[] disturbed, double[] values, RandomGenerator random) {
    double one = spread == Spread.EACH_READING ? 0 : draw(random);
    for (int i = 0; i < values.length; i++) {
      disturbed[i] +=
          switch (spread) {
            case EACH_READING -> draw(random);
            case SAME_OFFSET -> one;
            case SAME_SHARE -> one * values[i];
          };
    }
  }

  /** With finite degrees of freedom a scaled Student t (JCGM 101:2008, 6.4.9). */
  private double draw(RandomGenerator random) {
    double standard = distribution.standardSample(random);
    return standardUncertainty * standard / studentDivisor(random);
  }

  private double studentDivisor(RandomGenerator random) {
    if (degreesOfFreedom == Double.POSITIVE_INFINITY) {
      return 1;
    }
    int whole = (int) Math.min(degreesOfFreedom, 10_000);
    double squares = 0;
    for (int i = 0; i < whole; i++) {
      double gaussian = random.nextGaussian();
      squares += gaussian * gaussian;
    }
    return Math.sqrt(squares / whole);
  }

  private static double[] filled(double value, int length) {
    double[] values = new double[length];
    Arrays.fill(values, value);
    return values;
  }
}
