package loopwright.protection;

/**
 * How the movement of a shaft changes the gap: one for one in front of a collar, by sin θ of it on
 * a ramp of the angle θ.
 *
 * @param degrees θ, more than 0 and at most 90
 */
public record Ramp(double degrees) {
  /** A collar square to the movement. */
  public static final Ramp NONE = new Ramp(90);

  /** Refuses an angle on which nothing moves. */
  public Ramp {
    if (!(degrees > 0 && degrees <= 90)) {
      throw new IllegalArgumentException("A ramp has more than 0 and at most 90 degrees.");
    }
  }

  boolean isCollar() {
    return degrees == 90;
  }

  /** Change of gap for each unit of movement. */
  double sine() {
    return isCollar() ? 1 : Math.sin(Math.toRadians(degrees));
  }

  /**
   * What a monitor counts for each µm of movement, mV. Some are told the angle beside the loop's
   * own scale factor, others a scale factor with the angle in it already: whichever of the two the
   * number told lies nearer to, in proportion.
   *
   * @param told to the monitor, mV/µm
   * @param own of the loop when it was right, mV per µm of gap
   */
  double perMovement(double told, double own) {
    return isInside(told, own) ? told : told * sine();
  }

  /** Whether the number told has the angle in it. */
  boolean isInside(double told, double own) {
    return !isCollar() && told < own * Math.sqrt(sine());
  }
}
