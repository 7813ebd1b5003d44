package loopwright.curve;

import java.math.BigDecimal;
import java.util.List;
import loopwright.units.Dimension;
import loopwright.units.Reported;
import loopwright.units.ScaleFactor;

/**
 * The limits a curve is judged by, with where they come from. A limit is inclusive: a value beyond
 * it by no more than 1e-9 of it still conforms, so that rounding in the last digit decides nothing.
 *
 * @param code short stable name, for instance {@code api670-2mm}
 * @param name in words
 * @param version counted from 1; a record keeps the version that judged it
 * @param source the document, or "common practice, no source"
 * @param edition of the source, empty when there is none
 * @param nominal slope of the line and middle of the ISF band, as declared
 * @param isfTolerancePercent largest departure of an increment's scale factor from nominal
 * @param dslLimit largest deviation from the straight line, in the unit it is declared in
 * @param shiftRule how the line is placed
 * @param grids one in µm, one in mil, or both
 */
public record ToleranceProfile(
    String code,
    String name,
    int version,
    String source,
    String edition,
    ScaleFactor nominal,
    BigDecimal isfTolerancePercent,
    Reported dslLimit,
    ShiftRule shiftRule,
    List<Grid> grids) {

  private static final double INCLUSIVE = 1e-9;

  /** Refuses limits that are not above zero, and a profile without a grid. */
  public ToleranceProfile {
    grids = List.copyOf(grids);
    if (isfTolerancePercent.signum() <= 0 || isfTolerancePercent.doubleValue() >= 100) {
      throw new IllegalArgumentException("An ISF tolerance lies between 0 and 100 %.");
    }
    if (dslLimit.unit().dimension() != Dimension.GAP || dslLimit.amount().signum() <= 0) {
      throw new IllegalArgumentException("A DSL limit is a distance above zero.");
    }
    if (grids.isEmpty()) {
      throw new IllegalArgumentException("A profile says at which gaps to read.");
    }
  }

  /** mV/µm. */
  public double slope() {
    return nominal.millivoltsPerMicrometre();
  }

  /** Lower ISF limit, mV/µm. */
  public double isfLowest() {
    return slope() * (1 - isfTolerancePercent.doubleValue() / 100);
  }

  /** Upper ISF limit, mV/µm. */
  public double isfHighest() {
    return slope() * (1 + isfTolerancePercent.doubleValue() / 100);
  }

  public double dslLimitMicrometres() {
    return dslLimit.canonical();
  }

  /**
   * Does an increment's scale factor conform?
   *
   * @param isf mV/µm
   */
  public boolean isfConforms(double isf) {
    return isf >= isfLowest() * (1 - INCLUSIVE) && isf <= isfHighest() * (1 + INCLUSIVE);
  }

  /** Does a deviation from the straight line conform, whatever its sign? */
  public boolean dslConforms(double deviationMicrometres) {
    return Math.abs(deviationMicrometres) <= dslLimitMicrometres() * (1 + INCLUSIVE);
  }
}
