package loopwright.dynamic;

/**
 * What a field cable takes away: the driver's output resistance and the cable's capacitance make a
 * low pass of first order, |H| = 1/√(1 + (f/f_c)²) with f_c = 1/(2π R C). Textbook physics; the
 * cable's own resistance and inductance and the monitor's input are left out.
 *
 * @param sourceOhms output resistance of the driver
 * @param farads of the whole cable
 */
public record FieldCable(double sourceOhms, double farads) {
  /** Output resistance where nobody says; from memory, typical of the trade. */
  public static final double USUAL_OHMS = 50;

  /** Refuses what can't be. */
  public FieldCable {
    if (!(sourceOhms > 0 && farads > 0)) {
      throw new IllegalArgumentException("A cable has a capacitance and a source in front.");
    }
  }

  /**
   * @param picofaradsPerMetre of the cable
   */
  public static FieldCable of(double sourceOhms, double picofaradsPerMetre, double metres) {
    return new FieldCable(sourceOhms, picofaradsPerMetre * 1e-12 * metres);
  }

  /** Where the output has fallen to 1/√2, Hz. */
  public double cornerHertz() {
    return 1 / (2 * Math.PI * sourceOhms * farads);
  }

  /** What is left of the amplitude, 0 to 1. */
  public double ratio(double hertz) {
    return 1 / Math.hypot(1, hertz / cornerHertz());
  }

  public double decibels(double hertz) {
    return Decibels.of(ratio(hertz));
  }
}
