package loopwright.cause;

import java.util.Arrays;
import java.util.Optional;
import loopwright.numerics.StraightLine;

/**
 * Readings at known gaps of a loop as it is now. Over its baseline the logarithm of their ratio is
 * a straight line of the gap when the length is wrong: level ln k at the set gap, slope c · ln k.
 *
 * @param gaps µm, rising, three at least
 * @param volts V, negative
 */
public record PresentCurve(double[] gaps, double[] volts) {
  private static final double TOGETHER = 0.03;
  private static final double LEVEL_SPREAD = 0.006;
  private static final double SLOPE_SPREAD = 0.01;

  /** Refuses fewer than three readings and outputs that aren't negative. */
  public PresentCurve {
    if (gaps.length != volts.length || gaps.length < StraightLine.FEWEST) {
      throw new IllegalArgumentException("A curve has three readings at least.");
    }
    if (!Arrays.stream(volts).allMatch(v -> v < 0)) {
      throw new IllegalArgumentException("A curve's outputs are negative.");
    }
  }

  /**
   * Do volts and sensitivity stand beside each other on this curve? A sentence if they don't, by
   * more than what was measured leaves open.
   */
  Optional<String> disagreement(Observation seen) {
    for (int i = 1; i < gaps.length; i++) {
      if ((volts[i - 1] - seen.volts()) * (volts[i] - seen.volts()) > 0) {
        continue;
      }
      double slope = 1000 * (volts[i - 1] - volts[i]) / (gaps[i] - gaps[i - 1]);
      double difference = Math.abs(Math.log(seen.sensitivity() / slope));
      return slope > 0 && difference < TOGETHER + 3 * seen.sensitivityUncertainty()
          ? Optional.empty()
          : Optional.of(
              "On the present curve the slope at "
                  + Told.volts(seen.volts())
                  + " is "
                  + Told.sensitivity(slope)
                  + ", not the sensitivity given. Were volts and sensitivity taken at the same gap"
                  + " and the same place?");
    }
    return Optional.empty();
  }

  /** Fits ln(V/V₀) over (g − g set) in mm. */
  Shape shape(Baseline baseline) {
    return shape(baseline, volts);
  }

  /** What a distortion would make of it. */
  Shape shape(Baseline baseline, Distortion distortion) {
    return shape(
        baseline, Arrays.stream(gaps).map(gap -> distortion.volts(baseline, gap)).toArray());
  }

  private Shape shape(Baseline baseline, double[] outputs) {
    double[] millimetres = new double[gaps.length];
    double[] ratios = new double[gaps.length];
    for (int i = 0; i < gaps.length; i++) {
      millimetres[i] = (gaps[i] - baseline.setGapMicrometres()) / 1000;
      double before = Math.min(baseline.volts(gaps[i]), -0.05);
      ratios[i] = Math.log(Math.min(outputs[i], -0.01) / before);
    }
    StraightLine line = StraightLine.fit(millimetres, ratios);
    return new Shape(
        line.intercept(),
        line.slope(),
        Math.hypot(LEVEL_SPREAD, line.interceptStandardError()),
        Math.hypot(SLOPE_SPREAD, line.slopeStandardError()));
  }

  /**
   * @param level logarithm of the ratio at the set gap
   * @param slope its change, per mm
   * @param levelSpread standard uncertainty of the level: the zero of the gap, scatter
   * @param slopeSpread standard uncertainty of the slope
   */
  record Shape(double level, double slope, double levelSpread, double slopeSpread) {
    double density(Shape predicted) {
      return Student8.density(level - predicted.level, levelSpread)
          * Student8.density(slope - predicted.slope, slopeSpread);
    }
  }
}
