package loopwright.uncertainty;

import java.util.List;
import loopwright.curve.CurvePoint;

/**
 * Readings that a result is made of.
 *
 * @param gaps µm, rising; for a dynamic check the displacement, pk-pk
 * @param volts V, as many; for a dynamic check the output, pk-pk
 */
record Readings(double[] gaps, double[] volts) {

  /** Refuses arrays of different lengths. */
  Readings {
    if (gaps.length != volts.length) {
      throw new IllegalArgumentException("Each reading has a gap and a voltage.");
    }
  }

  static Readings of(List<CurvePoint> points) {
    return new Readings(
        points.stream().mapToDouble(CurvePoint::gapMicrometres).toArray(),
        points.stream().mapToDouble(CurvePoint::volts).toArray());
  }

  double[] of(Quantity quantity) {
    return quantity == Quantity.GAP ? gaps : volts;
  }

  int last() {
    return gaps.length - 1;
  }
}
