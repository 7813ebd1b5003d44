package loopwright.cause;

/**
 * Student's t with eight degrees of freedom: near its middle like a normal distribution, but a
 * value far out is unlikely, not unthinkable. A single odd reading can't push a probability to 0 or
 * 1, and the logarithm of the density is nowhere steep, so that probabilities move smoothly with
 * what was measured.
 */
final class Student8 {
  /** Γ(4.5) / (√(8π) Γ(4)). */
  private static final double AT_ZERO = 0.38669902096139;

  private Student8() {}

  /** Density per unit of x of a value that far from its middle. */
  static double density(double distance, double scale) {
    double t = distance / scale;
    double base = 1 + t * t / 8;
    double squared = base * base;
    return AT_ZERO / (scale * squared * squared * Math.sqrt(base));
  }
}
