package loopwright.dynamic;

/** Ratios of amplitudes in dB: 20 lg of the ratio (IEC 60027-3; from memory). */
public final class Decibels {
  private Decibels() {}

  /**
   * @param ratio of two amplitudes, above zero
   */
  public static double of(double ratio) {
    if (!(ratio > 0)) {
      throw new IllegalArgumentException("A ratio of amplitudes is above zero.");
    }
    return 20 * Math.log10(ratio);
  }

  /** The ratio of amplitudes. */
  public static double ratio(double decibels) {
    return Math.pow(10, decibels / 20);
  }
}
