package loopwright.dynamic;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import loopwright.curve.Curve;
import loopwright.curve.CurveReading;
import loopwright.numerics.MonotoneCurve;

/**
 * A static curve whose slope is asked for at one gap: drawn smoothly through its readings, of an up
 * and a down run through their mean.
 */
public final class StaticCurve {
  private final MonotoneCurve curve;
  private final double[] gaps;

  private StaticCurve(MonotoneCurve curve, double[] gaps) {
    this.curve = curve;
    this.gaps = gaps;
  }

  /** Empty if the output doesn't fall from reading to reading. */
  public static Optional<StaticCurve> of(Curve curve) {
    Map<Double, Double> means =
        curve.readings().stream()
            .collect(
                Collectors.groupingBy(
                    CurveReading::gapMicrometres,
                    TreeMap::new,
                    Collectors.averagingDouble(CurveReading::volts)));
    double[] gaps = means.keySet().stream().mapToDouble(Double::doubleValue).toArray();
    double[] volts = means.values().stream().mapToDouble(Double::doubleValue).toArray();
    for (int i = 1; i < volts.length; i++) {
      if (!(volts[i] < volts[i - 1])) {
        return Optional.empty();
      }
    }
    return gaps.length < 2
        ? Optional.empty()
        : Optional.of(new StaticCurve(MonotoneCurve.through(gaps, volts), gaps));
  }

  /** The gap at which it gives that output, µm; empty beyond its readings. */
  public OptionalDouble gapAt(double volts) {
    return curve.whereIs(volts);
  }

  public boolean reaches(double gapMicrometres) {
    return gapMicrometres >= curve.firstX() && gapMicrometres <= curve.lastX();
  }

  /** Local sensitivity, mV/µm, positive. */
  public double slopeAt(double gapMicrometres) {
    return -1000 * curve.slopeAt(gapMicrometres);
  }

  public double middle() {
    return (curve.firstX() + curve.lastX()) / 2;
  }

  /** Gaps at which it was read, µm, rising. */
  public List<Double> gaps() {
    return Arrays.stream(gaps).boxed().toList();
  }
}
