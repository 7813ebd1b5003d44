package loopwright.cause;

/**
 * One way in which a loop's output may differ from its baseline: V(g) = K(g) · V₀(g) + offset with
 * ln K(g) = ln k · (1 + c · (g − g set)), and the sensitivity shown differs from the slope of V by
 * one more factor where it isn't the curve that is distorted.
 *
 * @param lnFactor ln k at the set gap
 * @param perMillimetre c, per mm
 * @param offsetVolts V
 * @param lnSensitivity logarithm of the factor between the slope of V and the sensitivity shown
 */
record Distortion(double lnFactor, double perMillimetre, double offsetVolts, double lnSensitivity) {
  static final Distortion NONE = new Distortion(0, 0, 0, 0);

  private static final int MOST_STEPS = 40;
  private static final double CLOSE = 1e-5;

  static Distortion scaled(double lnFactor) {
    return new Distortion(lnFactor, 0, 0, 0);
  }

  static Distortion along(double lnFactor, double perMillimetre) {
    return new Distortion(lnFactor, perMillimetre, 0, 0);
  }

  double volts(Baseline baseline, double gap) {
    return Math.exp(lnAt(baseline, gap)) * baseline.volts(gap) + offsetVolts;
  }

  /** −dV/dg in mV/µm; 1 V/mm is 1 mV/µm. */
  double slope(Baseline baseline, double gap) {
    return Math.exp(lnAt(baseline, gap))
        * (baseline.sensitivity(gap) - lnFactor * perMillimetre * baseline.volts(gap));
  }

  /** What is shown as sensitivity, mV/µm. */
  double sensitivity(Baseline baseline, double gap) {
    return slope(baseline, gap) * Math.exp(lnSensitivity);
  }

  /** On the baseline's tangent at the set gap, without change along the gap. */
  private double guess(Baseline baseline, double volts) {
    double undistorted = (volts - offsetVolts) * Math.exp(-lnFactor);
    return baseline.setGapMicrometres()
        + 1000 * (baseline.setVolts() - undistorted) / baseline.setSensitivity();
  }

  private double lnAt(Baseline baseline, double gap) {
    return lnFactor * (1 + perMillimetre * (gap - baseline.setGapMicrometres()) / 1000);
  }

  /**
   * The gap at which the output is that; NaN where the distorted curve doesn't give it.
   *
   * @param volts V
   */
  double gapAt(Baseline baseline, double volts) {
    double travel = baseline.travelMicrometres();
    double low = baseline.setGapMicrometres() - 3 * travel;
    double high = baseline.setGapMicrometres() + 3 * travel;
    double gap = Math.max(low, Math.min(high, guess(baseline, volts)));
    for (int i = 0; i < MOST_STEPS; i++) {
      double tooHigh = volts(baseline, gap) - volts;
      double slope = slope(baseline, gap);
      if (Math.abs(tooHigh) < CLOSE) {
        return slope > 0 ? gap : Double.NaN;
      }
      if (tooHigh > 0) {
        low = gap;
      } else {
        high = gap;
      }
      double next = slope > 0 ? gap + 1000 * tooHigh / slope : Double.NaN;
      gap = next > low && next < high ? next : (low + high) / 2;
    }
    return Double.NaN;
  }
}
