package loopwright.cause;

/**
 * How a wrong total length distorts a curve: k = (system length / fitted length)ⁿ at the set gap,
 * changing along the gap as exp(c · ln k · (g − g set)).
 *
 * @param n exponent of the lengths
 * @param nUncertainty standard uncertainty of n
 * @param c change along the gap, per mm
 * @param cUncertainty standard uncertainty of c
 */
public record LengthLaw(double n, double nUncertainty, double c, double cUncertainty) {
  /** Share of the system length that the law was thought out for. */
  public static final double REACH = 0.25;

  /** mm: −10 V at 200 mV/mil. */
  private static final double TOLD_FOR_TRAVEL = 1.27;

  /** n = 1.0 ± 0.35, c = 0.3 ± 0.2 per mm: common practice and simulation, no source. */
  public static LengthLaw unproved() {
    return new LengthLaw(1.0, 0.35, 0.3, 0.2);
  }

  /** Refuses an exponent that isn't positive and uncertainties that aren't. */
  public LengthLaw {
    if (!(n > 0 && nUncertainty > 0 && cUncertainty > 0) || !Double.isFinite(c)) {
      throw new IllegalArgumentException("A length law has a positive exponent and is uncertain.");
    }
  }

  /** The same with its uncertainties multiplied. */
  LengthLaw doubted(double factor) {
    return new LengthLaw(n, factor * nUncertainty, c, factor * cUncertainty);
  }

  /**
   * The same for a probe of that travel from 0 V to the set gap. The change along the gap is told
   * for probes of the 8 mm class; of larger ones it is less per mm, in proportion, since their
   * field reaches farther.
   */
  LengthLaw overTravel(double millimetres) {
    double share = Math.min(1, TOLD_FOR_TRAVEL / millimetres);
    return new LengthLaw(n, nUncertainty, share * c, share * cUncertainty);
  }

  Grid exponents(int count) {
    return Grid.normal(n, nUncertainty, count).above(0.05);
  }

  Grid slopes(int count) {
    return Grid.normal(c, cUncertainty, count);
  }
}
