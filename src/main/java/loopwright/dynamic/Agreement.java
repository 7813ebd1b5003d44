package loopwright.dynamic;

/**
 * Two sensitivities of one loop held against each other: E = |a − b| / √(u_a² + u_b²), the two
 * taken as independent. They should agree: the static curve proves linearity and length, the
 * dynamic check the way of the alternating signal.
 *
 * @param dynamic mV/µm
 * @param fixed static slope at the operating gap, mV/µm
 * @param combined standard uncertainty of their difference, mV/µm, above zero
 * @see "JCGM 100:2008, 5.1.2 equation (10)"
 */
public record Agreement(double dynamic, double fixed, double combined) {
  /** They agree up to so many combined standard uncertainties; own choice, near 95 %. */
  public static final double AGREE = 2;

  /** Refuses a difference without uncertainty. */
  public Agreement {
    if (!(combined > 0)) {
      throw new IllegalArgumentException("Without an uncertainty nothing agrees or disagrees.");
    }
  }

  public static Agreement of(double dynamic, double uDynamic, double fixed, double uFixed) {
    return new Agreement(dynamic, fixed, Math.hypot(uDynamic, uFixed));
  }

  public double percent() {
    return 100 * (dynamic - fixed) / fixed;
  }

  /** By how many combined standard uncertainties they differ. */
  public double distance() {
    return Math.abs(dynamic - fixed) / combined;
  }

  public boolean agrees() {
    return distance() <= AGREE;
  }
}
