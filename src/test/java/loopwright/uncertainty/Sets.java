package loopwright.uncertainty;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import loopwright.curve.BuiltInProfiles;
import loopwright.curve.Curve;
import loopwright.curve.CurveAnalysis;
import loopwright.curve.CurveReading;
import loopwright.curve.CurveResult;
import loopwright.curve.Run;

/** Synthetic readings and equipment for tests. */
final class Sets {
  static final double MIL = 25.4;

  /** A conforming curve, synthetic. */
  static final double[] GOOD = {-1.93, -3.97, -6.02, -8.03, -10.01, -12.00, -13.98, -15.93, -17.84};

  /** As of a loop that is too long, synthetic; its two extremes stand clear of the others. */
  static final double[] LONG = {-1.65, -3.53, -5.37, -7.17, -8.92, -10.61, -12.23, -13.77, -15.24};

  private Sets() {}

  /** 10 to 90 mil by 10. */
  static CurveResult inch(double... volts) {
    List<CurveReading> readings = new ArrayList<>();
    for (int i = 0; i < volts.length; i++) {
      readings.add(CurveReading.of(Run.UP, MIL * 10 * (i + 1), volts[i]));
    }
    return CurveAnalysis.of(new Curve(readings), BuiltInProfiles.named("api670-2mm").orElseThrow());
  }

  /** That many readings from 254 to 2,286 µm. */
  static Readings spread(int count, DoubleUnaryOperator volts) {
    double[] gaps = new double[count];
    double[] outputs = new double[count];
    for (int i = 0; i < count; i++) {
      gaps[i] = 254 + i * 2032.0 / (count - 1);
      outputs[i] = volts.applyAsDouble(gaps[i]);
    }
    return new Readings(gaps, outputs);
  }

  static double ideal(double gapMicrometres) {
    return -gapMicrometres * 0.2 / MIL;
  }

  /** Voltage and gap of each reading by itself, and one gap scale. */
  static List<ErrorSource> equipment(double volts, double micrometres, double scale) {
    return List.of(
        ErrorSource.known("voltage reading", Quantity.VOLTS, Spread.EACH_READING, volts),
        ErrorSource.known("gap reading", Quantity.GAP, Spread.EACH_READING, micrometres),
        ErrorSource.known("gap scale", Quantity.GAP, Spread.SAME_SHARE, scale));
  }
}
