package loopwright.cause;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What was measured: volts and sensitivity at one and the same gap and place.
 *
 * @param volts V, negative
 * @param sensitivity mV/µm, positive
 * @param voltsUncertainty standard, V
 * @param sensitivityUncertainty standard, relative
 * @param gapMicrometres where it is known by other means than the output
 * @param curve readings at known gaps of the loop as it is now
 * @param at where it was taken
 */
public record Observation(
    double volts,
    double sensitivity,
    double voltsUncertainty,
    double sensitivityUncertainty,
    OptionalDouble gapMicrometres,
    Optional<PresentCurve> curve,
    TappingPoint at) {

  /** Usual standard uncertainty of a gap voltage, V. */
  public static final double USUAL_VOLTS = 0.05;

  /** Usual relative standard uncertainty of a sensitivity. */
  public static final double USUAL_SENSITIVITY = 0.015;

  /** Refuses what is no output or no sensitivity, and certainty. */
  public Observation {
    if (!(volts <= 0 && sensitivity > 0 && voltsUncertainty > 0 && sensitivityUncertainty > 0)) {
      throw new IllegalArgumentException("Volts are negative, the rest is positive.");
    }
  }

  public static Observation of(double volts, double sensitivity) {
    return new Observation(
        volts,
        sensitivity,
        USUAL_VOLTS,
        USUAL_SENSITIVITY,
        OptionalDouble.empty(),
        Optional.empty(),
        TappingPoint.DRIVER);
  }

  /** The same with that curve beside it. */
  public Observation with(PresentCurve present) {
    return new Observation(
        volts,
        sensitivity,
        voltsUncertainty,
        sensitivityUncertainty,
        gapMicrometres,
        Optional.of(present),
        at);
  }
}
