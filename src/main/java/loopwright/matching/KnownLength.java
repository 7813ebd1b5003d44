package loopwright.matching;

import loopwright.units.Length;

/**
 * A nominal (electrical) length and how it is known.
 *
 * @param length above zero
 */
public record KnownLength(Length length, Evidence evidence) {

  /** Refuses a length that isn't above zero. */
  public KnownLength {
    if (length.metres().signum() <= 0) {
      throw new IllegalArgumentException("A nominal length is above zero, not " + length + ".");
    }
  }

  public static KnownLength readOnPart(String metres) {
    return new KnownLength(Length.ofMetres(metres), Evidence.READ_ON_PART);
  }
}
