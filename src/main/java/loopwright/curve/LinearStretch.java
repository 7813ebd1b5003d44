package loopwright.curve;

import java.util.List;
import java.util.Optional;

/**
 * Finds the linear range: the longest run of neighbouring whole increments whose ISF conforms and
 * over whose readings, with the line placed anew on them alone, the deviation conforms. It may
 * reach past the profile's range where readings show that the curve is straight there too. Of
 * stretches of one length the one with the smaller deviation is taken, then the nearer.
 */
final class LinearStretch {
  private static final double EQUAL = 1e-9;

  private final double[] gaps;
  private final double[] volts;
  private final ToleranceProfile profile;
  private Optional<GapRange> best = Optional.empty();
  private double bestDeviation;

  private LinearStretch(double[] gaps, double[] volts, ToleranceProfile profile) {
    this.gaps = gaps;
    this.volts = volts;
    this.profile = profile;
  }

  /**
   * @param gaps of the chain, µm, rising
   * @param volts of the chain
   * @param steps between neighbours of the chain
   */
  static Optional<GapRange> in(
      double[] gaps, double[] volts, List<Increment> steps, ToleranceProfile profile) {
    LinearStretch search = new LinearStretch(gaps, volts, profile);
    for (int from = 0; from < steps.size(); from++) {
      search.growFrom(from, steps);
    }
    return search.best;
  }

  /** A longer stretch never deviates less under the minimax rule; under the mean rule it may. */
  private void growFrom(int from, List<Increment> steps) {
    double least = residual(from);
    double most = least;
    double sum = least;
    for (int to = from + 1; to < gaps.length; to++) {
      Increment step = steps.get(to - 1);
      if (!step.whole() || !step.conforms()) {
        return;
      }
      least = Math.min(least, residual(to));
      most = Math.max(most, residual(to));
      sum += residual(to);
      double[] extremes = {least, most};
      double shift =
          profile.shiftRule() == ShiftRule.MEAN
              ? sum / (to - from + 1)
              : ShiftRule.MINIMAX.shift(extremes);
      offer(new GapRange(gaps[from], gaps[to]), Math.max(most - shift, shift - least));
    }
  }

  private double residual(int i) {
    return PlacedLine.residual(profile.slope(), gaps[i], volts[i]);
  }

  private void offer(GapRange candidate, double deviation) {
    if (!profile.dslConforms(deviation)) {
      return;
    }
    double longest = best.map(GapRange::lengthMicrometres).orElse(0.0);
    double length = candidate.lengthMicrometres();
    boolean longer = length > longest * (1 + EQUAL);
    boolean straighter =
        length >= longest * (1 - EQUAL)
            && deviation < bestDeviation - EQUAL * profile.dslLimitMicrometres();
    if (longer || straighter) {
      best = Optional.of(candidate);
      bestDeviation = deviation;
    }
  }
}
