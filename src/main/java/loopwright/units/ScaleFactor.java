package loopwright.units;

import java.math.BigDecimal;

/**
 * Sensitivity of a loop, positive, kept as declared: 200 mV/mil is 200/25.4 mV/µm exactly, which is
 * 0.05 % more than the 7.87 mV/µm that some papers print. Which of them is the nominal is for the
 * profile or family to say, so the two never become one.
 */
public record ScaleFactor(BigDecimal declared, Unit unit) {

  /** Refuses a unit of another dimension and anything not above zero. */
  public ScaleFactor {
    if (unit.dimension() != Dimension.SCALE_FACTOR) {
      throw new IllegalArgumentException(unit.symbol() + " is not a unit of scale factor.");
    }
    if (declared.signum() <= 0) {
      throw new IllegalArgumentException("A scale factor is positive.");
    }
  }

  public static ScaleFactor millivoltsPerMil(String declared) {
    return new ScaleFactor(new BigDecimal(declared), Unit.MILLIVOLT_PER_MIL);
  }

  public static ScaleFactor millivoltsPerMicrometre(String declared) {
    return new ScaleFactor(new BigDecimal(declared), Unit.MILLIVOLT_PER_MICROMETRE);
  }

  /** In mV/µm, the nearest double. */
  public double millivoltsPerMicrometre() {
    return unit.toCanonical(declared).doubleValue();
  }

  /** In mV/mil, the nearest double. */
  public double millivoltsPerMil() {
    return Unit.MILLIVOLT_PER_MIL.fromCanonical(unit.toCanonical(declared)).doubleValue();
  }

  /** As declared: {@code 200 mV/mil}. */
  @Override
  public String toString() {
    return Numbers.plain(declared) + " " + unit.symbol();
  }
}
