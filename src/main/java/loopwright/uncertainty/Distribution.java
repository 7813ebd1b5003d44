package loopwright.uncertainty;

import java.util.Locale;
import java.util.random.RandomGenerator;

/**
 * How the possible values of an error lie about zero.
 *
 * @see "JCGM 100:2008, 4.3.7 (rectangular, a/√3), 4.3.9 (triangular, a/√6), H.1.3.4 (arcsine,
 *     a/√2)"
 */
public enum Distribution {
  /** Known by its standard uncertainty; the only one that may come with degrees of freedom. */
  NORMAL(1) {
    @Override
    double standardSample(RandomGenerator random) {
      return random.nextGaussian();
    }
  },
  RECTANGULAR(Math.sqrt(3)) {
    @Override
    double standardSample(RandomGenerator random) {
      return Math.sqrt(3) * (2 * random.nextDouble() - 1);
    }
  },
  TRIANGULAR(Math.sqrt(6)) {
    @Override
    double standardSample(RandomGenerator random) {
      return Math.sqrt(6) * (random.nextDouble() + random.nextDouble() - 1);
    }
  },
  /** U-shaped: a cyclic quantity met at any moment of its cycle. */
  ARCSINE(Math.sqrt(2)) {
    @Override
    double standardSample(RandomGenerator random) {
      return Math.sqrt(2) * Math.sin(2 * Math.PI * random.nextDouble());
    }
  };

  private final double divisor;

  Distribution(double divisor) {
    this.divisor = divisor;
  }

  /**
   * Standard uncertainty of an error that lies within ± the half-width; of a normal one the
   * "half-width" is the standard uncertainty itself.
   *
   * @param halfWidth in any unit; the result is in that unit
   */
  public double standardUncertainty(double halfWidth) {
    return halfWidth / divisor;
  }

  /** One value of zero mean and unit standard deviation. */
  abstract double standardSample(RandomGenerator random);

  public String label() {
    return name().toLowerCase(Locale.ROOT);
  }
}
