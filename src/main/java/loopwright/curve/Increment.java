package loopwright.curve;

/**
 * A step between two neighbours of the judged chain.
 *
 * @param span from the smaller gap to the larger
 * @param isf (V₁ − V₂)/(g₂ − g₁), mV/µm, positive when the output gets more negative
 * @param whole it has the width that ISF limits apply to
 * @param judged whole and inside the profile's range
 * @param conforms inside the limits, judged or not
 */
public record Increment(
    GapRange span, double isf, boolean whole, boolean judged, boolean conforms) {

  /** Signed departure from a nominal slope, percent. */
  double percentFrom(double nominal) {
    return 100 * (isf - nominal) / nominal;
  }
}
