package loopwright.cause;

import loopwright.numerics.MonotoneCurve;

/** What the loop gave when all was right: its own last good curve, or a stated line. */
public interface Baseline {
  /**
   * A straight line through one point.
   *
   * @param setGapMicrometres of the point
   * @param setVolts V, negative
   * @param setSensitivity mV/µm, positive
   */
  static Baseline line(double setGapMicrometres, double setVolts, double setSensitivity) {
    return new BaselineLine(setGapMicrometres, setVolts, setSensitivity);
  }

  /**
   * The loop's own last good curve.
   *
   * @param volts over gap in µm, falling
   * @param setGapMicrometres where the probe was set
   */
  static Baseline curve(MonotoneCurve volts, double setGapMicrometres) {
    return new BaselineCurve(volts, setGapMicrometres);
  }

  /** Output at a gap in µm, V, negative. */
  double volts(double gapMicrometres);

  /** Sensitivity at a gap in µm, mV/µm, positive. */
  double sensitivity(double gapMicrometres);

  /** The gap the probe was set to, µm. */
  double setGapMicrometres();

  /** Standard uncertainty of its volts, V. */
  double voltsUncertainty();

  /** Relative standard uncertainty of its sensitivity. */
  double sensitivityUncertainty();

  /**
   * Factor on the uncertainties of the length law: how it acts on an unknown curve is less sure.
   */
  double doubtOfLaw();

  /** Does it stand on a nominal line rather than on the loop's own readings? */
  boolean isStated();

  default double setVolts() {
    return volts(setGapMicrometres());
  }

  default double setSensitivity() {
    return sensitivity(setGapMicrometres());
  }

  /** How far the tip is from where the output would be 0 V, µm: the family's size. */
  default double travelMicrometres() {
    return -1000 * setVolts() / setSensitivity();
  }
}
