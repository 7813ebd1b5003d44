package loopwright.cause;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * One way in which a cause can hold.
 *
 * @param fittedLength total nominal length that would be fitted, as given; empty where it isn't one
 *     of the known
 * @param regapped the probe was moved until the voltage looked right
 * @param share of the cause's weight, before measuring
 * @param likelihood of what was seen
 * @param signs what other measurements would show
 */
record Variant(
    Optional<BigDecimal> fittedLength,
    boolean regapped,
    double share,
    Likelihood likelihood,
    Signs signs) {

  /** With the right length. */
  static Variant rightLength(
      Situation situation, boolean regapped, double share, Likelihood likelihood, Signs signs) {
    return new Variant(Optional.of(situation.rightLength()), regapped, share, likelihood, signs);
  }
}
