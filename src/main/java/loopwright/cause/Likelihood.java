package loopwright.cause;

import java.util.ArrayList;
import java.util.List;

/** How well a variant of a hypothesis explains what was seen. */
interface Likelihood {
  /** Adds everything the variant allows; weights before measuring add up to 1. */
  void addTo(Tally tally, Weighing weighing);

  /** What the variant would show at its most typical: V and mV/µm. */
  Typical typical(Situation situation, Tally tally);

  /**
   * @param volts V
   * @param sensitivity mV/µm
   */
  record Typical(double volts, double sensitivity) {}

  /** A set of distortions, and where the probe may stand. */
  record Distorted(List<Node> nodes, GapBelief belief) implements Likelihood {

    public Distorted {
      nodes = List.copyOf(nodes);
    }

    /** One distortion for certain. */
    static Distorted by(Distortion distortion, GapBelief belief) {
      return new Distorted(List.of(new Node(distortion, 1)), belief);
    }

    /** Factors on the whole curve that aren't a matter of length. */
    static Distorted scaled(Grid lnFactors, GapBelief belief) {
      return crossed(lnFactors, Grid.certain(0), (k, none) -> Distortion.scaled(k), belief);
    }

    /** Every pair of two unknowns. */
    static Distorted crossed(Grid first, Grid second, Pair pair, GapBelief belief) {
      List<Node> nodes = new ArrayList<>(first.size() * second.size());
      for (int i = 0; i < first.size(); i++) {
        for (int j = 0; j < second.size(); j++) {
          nodes.add(
              new Node(
                  pair.of(first.values()[i], second.values()[j]),
                  first.weights()[i] * second.weights()[j]));
        }
      }
      return new Distorted(nodes, belief);
    }

    @Override
    public void addTo(Tally tally, Weighing weighing) {
      weighing.add(tally, nodes, belief);
    }

    @Override
    public Typical typical(Situation situation, Tally tally) {
      Baseline baseline = situation.baseline();
      Distortion mean = tally.distortion();
      double gap =
          switch (belief) {
            case AS_SET -> baseline.setGapMicrometres();
            case REGAPPED -> mean.gapAt(baseline, baseline.setVolts());
            case ANYWHERE, UNKNOWN -> tally.meanGap();
          };
      if (Double.isNaN(gap)) {
        gap = baseline.setGapMicrometres();
      }
      return new Typical(mean.volts(baseline, gap), mean.sensitivity(baseline, gap));
    }
  }

  /** A distortion and its weight before measuring. */
  record Node(Distortion distortion, double weight) {}

  /** Makes a distortion of two unknowns. */
  interface Pair {
    Distortion of(double first, double second);
  }
}
