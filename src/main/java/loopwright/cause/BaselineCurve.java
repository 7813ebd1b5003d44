package loopwright.cause;

import loopwright.numerics.MonotoneCurve;

/**
 * The loop's own last good curve, drawn smoothly through its readings and straight on beyond them.
 *
 * @param curve volts over gap in µm, falling
 * @param setGapMicrometres where the probe was set
 */
record BaselineCurve(MonotoneCurve curve, double setGapMicrometres) implements Baseline {
  private static final double VOLTS = 0.03;
  private static final double SENSITIVITY = 0.008;

  @Override
  public double volts(double gapMicrometres) {
    return curve.at(gapMicrometres);
  }

  @Override
  public double sensitivity(double gapMicrometres) {
    return -1000 * curve.slopeAt(gapMicrometres);
  }

  @Override
  public double voltsUncertainty() {
    return VOLTS;
  }

  @Override
  public double sensitivityUncertainty() {
    return SENSITIVITY;
  }

  @Override
  public double doubtOfLaw() {
    return 1;
  }

  @Override
  public boolean isStated() {
    return false;
  }
}
