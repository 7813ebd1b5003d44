package loopwright.cause;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Likelihood of what was seen under a distortion and a belief about the gap. The true output is
 * integrated out about the measured one (Gauss and Hermite, three points); each value fixes the
 * gap, and the gap the sensitivity.
 */
final class Weighing {
  private static final double[] NODES = {-Math.sqrt(3), 0, Math.sqrt(3)};
  private static final double[] WEIGHTS = {1.0 / 6, 2.0 / 3, 1.0 / 6};

  private final Situation situation;
  private final Optional<PresentCurve.Shape> shape;
  private final double lnSensitivity;
  private final Spreads spreads;
  private final Map<List<Likelihood.Node>, Solved[]> solved = new IdentityHashMap<>();

  Weighing(Situation situation) {
    this.situation = situation;
    this.shape = situation.shapeSeen();
    this.spreads = Spreads.of(situation);
    this.lnSensitivity = Math.log(situation.seen().sensitivity());
  }

  Situation situation() {
    return situation;
  }

  /**
   * What a distortion makes of one possible true output, before any belief about the gap.
   *
   * @param weight of node and output, times how well sensitivity, known gap and curve fit
   */
  private record Solved(
      Distortion distortion, double volts, double gap, double slope, double weight) {}

  /** Adds distortions to a tally, with their weights before measuring; a list is solved once. */
  void add(Tally tally, List<Likelihood.Node> nodes, GapBelief belief) {
    for (Solved each : solved.computeIfAbsent(nodes, this::solve)) {
      double density = belief.density(spreads, each.gap, each.volts, each.slope);
      tally.add(each.weight * density, each.distortion, each.gap);
    }
  }

  private Solved[] solve(List<Likelihood.Node> nodes) {
    List<Solved> all = new ArrayList<>(NODES.length * nodes.size());
    nodes.forEach(node -> solve(node, all));
    return all.toArray(Solved[]::new);
  }

  private void solve(Likelihood.Node node, List<Solved> all) {
    Distortion distortion = node.distortion();
    double shown = Math.exp(distortion.lnSensitivity());
    double weight = node.weight() * ofCurve(distortion);
    for (int i = 0; i < NODES.length; i++) {
      double volts = situation.seen().volts() + NODES[i] * situation.seen().voltsUncertainty();
      double gap = distortion.gapAt(situation.baseline(), volts);
      if (Double.isNaN(gap)) {
        continue;
      }
      double slope = distortion.slope(situation.baseline(), gap);
      double fits = ofSensitivity(slope * shown) * ofKnownGap(gap);
      all.add(new Solved(distortion, volts, gap, slope, weight * WEIGHTS[i] * fits));
    }
  }

  /** Density of the measured sensitivity's logarithm about a predicted one, mV/µm. */
  double ofSensitivity(double predicted) {
    return Student8.density(lnSensitivity - Math.log(predicted), spreads.ofSensitivity());
  }

  /** Relative standard uncertainty of a measured sensitivity beside a predicted one. */
  double relative() {
    return spreads.ofSensitivity();
  }

  /** How far a gap that nobody touched lies from the set one, µm. */
  double setSpreadMicrometres() {
    return spreads.ofSetGap();
  }

  /** How far one lies from it that somebody moved, µm. */
  double freeSpreadMicrometres() {
    return spreads.ofFreeGap();
  }

  double ofKnownGap(double gap) {
    if (situation.seen().gapMicrometres().isEmpty()) {
      return 1;
    }
    double distance = gap - situation.seen().gapMicrometres().getAsDouble();
    return Student8.density(distance, spreads.ofKnownGap());
  }

  double ofCurve(Distortion distortion) {
    return shape
        .map(
            seen ->
                seen.density(
                    situation.seen().curve().orElseThrow().shape(situation.baseline(), distortion)))
        .orElse(1.0);
  }
}
