package loopwright.curve;

import java.util.Arrays;

/**
 * The line of the profile's slope placed on readings. Deviation of a reading, in µm: d = g + 1000
 * V/S − shift, with g the gap in µm, V the voltage in V, S the slope in mV/µm; positive means less
 * negative than the line, so that the target reads closer than it is.
 *
 * @param slope mV/µm, positive
 * @param shiftMicrometres the gap at which the line reads 0 V
 */
record PlacedLine(double slope, double shiftMicrometres) {

  /** On the given readings by the profile's rule. */
  static PlacedLine on(double[] gaps, double[] volts, ToleranceProfile profile) {
    double slope = profile.slope();
    double[] residuals = new double[gaps.length];
    Arrays.setAll(residuals, i -> residual(slope, gaps[i], volts[i]));
    return new PlacedLine(slope, profile.shiftRule().shift(residuals));
  }

  static double residual(double slope, double gap, double volts) {
    return gap + 1000 * volts / slope;
  }

  double deviation(double gap, double volts) {
    return residual(slope, gap, volts) - shiftMicrometres;
  }

  /** The line's voltage at a gap, V. */
  double volts(double gap) {
    return (shiftMicrometres - gap) * slope / 1000;
  }
}
