package loopwright.dynamic;

/**
 * One reading of a dynamic check: a known vibration and the output that it gives.
 *
 * @param micrometres displacement pk-pk, above zero
 * @param volts output pk-pk, above zero
 * @param hertz above zero
 */
public record DynamicReading(double micrometres, double volts, double hertz) {
  /** Standard acceleration of gravity, m/s², exact (ISO 80000-3; 3rd CGPM, 1901). */
  private static final double GRAVITY = 9.80665;

  /** Refuses what is not above zero. */
  public DynamicReading {
    if (!(micrometres > 0 && volts > 0 && hertz > 0)) {
      throw new IllegalArgumentException(
          "A dynamic check has a displacement, an output and a frequency, all above zero.");
    }
  }

  /** Output over displacement, mV/µm. */
  public double sensitivity() {
    return 1000 * volts / micrometres;
  }

  /** Peak acceleration of that sine, in g: (2πf)² · pk-pk/2. */
  public double peakGravities() {
    double angular = 2 * Math.PI * hertz;
    return angular * angular * micrometres / 2 * 1e-6 / GRAVITY;
  }
}
