package loopwright.uncertainty;

import java.util.List;

/** What the sensitivity found by a dynamic check is worth. */
public final class DynamicUncertainty {
  private DynamicUncertainty() {}

  /**
   * Budget of output over displacement, mV/µm.
   *
   * @param displacementMicrometres pk-pk, above zero
   * @param outputVolts pk-pk, above zero; a sine's rms value times 2√2
   * @param sources of error in both, relative or absolute
   */
  public static Budget of(
      double displacementMicrometres, double outputVolts, List<ErrorSource> sources) {
    if (!(displacementMicrometres > 0 && outputVolts > 0)) {
      throw new IllegalArgumentException("A dynamic check has a displacement and an output.");
    }
    Readings one = new Readings(new double[] {displacementMicrometres}, new double[] {outputVolts});
    return Budget.of(new DynamicSensitivity(), one, sources);
  }
}
