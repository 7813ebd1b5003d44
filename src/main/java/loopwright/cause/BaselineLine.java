package loopwright.cause;

import java.util.Arrays;

/**
 * A straight line through one point. A sensitivity that is a nominal one to within some hundredths
 * of a percent is taken as stated, not measured: a loop's own sensitivity and gap voltage lie about
 * its family's, which makes everything concluded from it less sure. The change from one to the
 * other is gradual.
 */
final class BaselineLine implements Baseline {
  private static final double[] NOMINAL = {
    200 / 25.4, 8, 100 / 25.4, 4, 50 / 25.4, 2, 20 / 25.4, 0.8, 10 / 25.4, 0.4
  };
  private static final double NEAR_NOMINAL = 0.001;
  private static final double MEASURED_VOLTS = 0.05;
  private static final double STATED_VOLTS = 0.2;
  private static final double MEASURED_SENSITIVITY = 0.008;
  private static final double STATED_SENSITIVITY = 0.012;

  private static final double LESS_SURE = 0.25;

  private final double setGapMicrometres;
  private final double setVolts;
  private final double setSensitivity;
  private final double nominalShare;

  /**
   * @param setGapMicrometres of the point
   * @param setVolts at the point, negative
   * @param setSensitivity mV/µm, positive
   */
  BaselineLine(double setGapMicrometres, double setVolts, double setSensitivity) {
    this.setGapMicrometres = setGapMicrometres;
    this.setVolts = setVolts;
    this.setSensitivity = setSensitivity;
    this.nominalShare = nominalShare(setSensitivity);
  }

  @Override
  public double volts(double gapMicrometres) {
    return setVolts - setSensitivity * (gapMicrometres - setGapMicrometres) / 1000;
  }

  @Override
  public double sensitivity(double gapMicrometres) {
    return setSensitivity;
  }

  @Override
  public double setGapMicrometres() {
    return setGapMicrometres;
  }

  @Override
  public double voltsUncertainty() {
    return Math.hypot(MEASURED_VOLTS, nominalShare * STATED_VOLTS);
  }

  @Override
  public double sensitivityUncertainty() {
    return Math.hypot(MEASURED_SENSITIVITY, nominalShare * STATED_SENSITIVITY);
  }

  @Override
  public double doubtOfLaw() {
    return 1 + LESS_SURE * nominalShare;
  }

  @Override
  public boolean isStated() {
    return nominalShare > 0.5;
  }

  private static double nominalShare(double sensitivity) {
    return Arrays.stream(NOMINAL)
        .map(nominal -> Math.log(sensitivity / nominal) / NEAR_NOMINAL)
        .map(distance -> Math.exp(-0.5 * distance * distance))
        .max()
        .orElseThrow();
  }
}
