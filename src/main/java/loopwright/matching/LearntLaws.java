package loopwright.matching;

import java.util.Optional;

/** What confirmed lengths taught about the length law of families. */
@FunctionalInterface
public interface LearntLaws {
  /** Nothing was taught, or nobody knows. */
  LearntLaws NONE = family -> Optional.empty();

  /**
   * The law of a family.
   *
   * @param family its code; capitals don't count
   * @return empty where nothing was taught
   */
  Optional<LearntLaw> of(String family);

  /**
   * A family's exponent n in k = (system length / fitted length)ⁿ, as learnt.
   *
   * @param exponent above zero
   * @param uncertainty standard, of the exponent
   * @param cases confirmed lengths that it rests on, at least one
   */
  record LearntLaw(double exponent, double uncertainty, int cases) {
    public LearntLaw {
      if (!(exponent > 0 && uncertainty > 0) || cases < 1) {
        throw new IllegalArgumentException("A learnt law is uncertain and rests on cases.");
      }
    }
  }
}
