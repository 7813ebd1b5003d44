package loopwright.matching;

/**
 * The straight line that a family declares: V(g) = V_start − S · (g − g_from).
 *
 * @param fromMicrometres nearest gap of the linear range, µm
 * @param toMicrometres farthest gap of the linear range, µm
 * @param startVolts at the nearest gap, V, negative
 * @param millivoltsPerMicrometre nominal slope, positive
 */
public record NominalLine(
    double fromMicrometres,
    double toMicrometres,
    double startVolts,
    double millivoltsPerMicrometre) {

  /** Refuses a range that doesn't rise and a slope that isn't above zero. */
  public NominalLine {
    if (!(fromMicrometres < toMicrometres) || !(millivoltsPerMicrometre > 0)) {
      throw new IllegalArgumentException("A line has a rising range and a positive slope.");
    }
  }

  /** V at a gap in µm; farther is more negative. */
  public double voltsAt(double gapMicrometres) {
    return startVolts - millivoltsPerMicrometre * (gapMicrometres - fromMicrometres) / 1000;
  }

  /** Gap in µm at a voltage. */
  public double gapAt(double volts) {
    return fromMicrometres + (startVolts - volts) * 1000 / millivoltsPerMicrometre;
  }

  /** At the farthest gap. */
  public double endVolts() {
    return voltsAt(toMicrometres);
  }

  public double lengthMicrometres() {
    return toMicrometres - fromMicrometres;
  }

  /** Whether both gaps, µm, lie inside the range, its ends included. */
  public boolean holds(double nearMicrometres, double farMicrometres) {
    return nearMicrometres >= fromMicrometres - SLACK && farMicrometres <= toMicrometres + SLACK;
  }

  /** Rounding of the arithmetic, µm: a limit exactly on the end lies inside. */
  private static final double SLACK = 1e-6;
}
