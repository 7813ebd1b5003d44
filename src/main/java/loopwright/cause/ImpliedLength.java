package loopwright.cause;

import java.util.Arrays;

/**
 * What the numbers say about the total length if it is the length: any length, not only those sold,
 * the probe where it was set, moved until the voltage looked right, or anywhere. Before measuring,
 * lengths near the system length are likelier, as with {@link WrongLength}.
 *
 * @param metres median
 * @param lowMetres lower end of the 95 % interval
 * @param highMetres upper end
 * @param factor k, mean
 * @param factorUncertainty standard, of k
 * @param beyond probability that the length is off by more than the model covers
 */
public record ImpliedLength(
    double metres,
    double lowMetres,
    double highMetres,
    double factor,
    double factorUncertainty,
    double beyond) {
  private static final int LENGTHS = 51;
  private static final double SHORTEST = 0.6;
  private static final double LONGEST = 1.6;
  private static final double TAIL = 0.025;

  static ImpliedLength of(Weighing weighing) {
    Situation situation = weighing.situation();
    double system = situation.systemMetres();
    Grid lengths =
        Grid.of(
            SHORTEST * system,
            LONGEST * system,
            LENGTHS,
            metres -> WrongLength.weight(metres - system));
    Tally[] tallies = new Tally[LENGTHS];
    Arrays.setAll(tallies, i -> tally(weighing, system / lengths.values()[i]));
    double[] weights = new double[LENGTHS];
    Arrays.setAll(weights, i -> lengths.weights()[i] * tallies[i].weight());
    Tally all = new Tally();
    for (int i = 0; i < LENGTHS; i++) {
      all.add(tallies[i], lengths.weights()[i]);
    }
    Cumulative cumulative = Cumulative.of(lengths.values(), weights);
    return new ImpliedLength(
        cumulative.quantile(0.5),
        cumulative.quantile(TAIL),
        cumulative.quantile(1 - TAIL),
        all.meanFactor(),
        all.factorDeviation(),
        cumulative.below((1 - LengthLaw.REACH) * system)
            + 1
            - cumulative.below((1 + LengthLaw.REACH) * system));
  }

  private static Tally tally(Weighing weighing, double ratio) {
    Tally tally = new Tally();
    weighing.add(
        tally, Lengths.coarse(weighing.situation().lawHere(), Math.log(ratio)), GapBelief.UNKNOWN);
    return tally;
  }

  /** A density on even values as a distribution, linear between them. */
  private record Cumulative(double[] values, double[] upTo) {

    static Cumulative of(double[] values, double[] density) {
      double[] upTo = new double[values.length];
      for (int i = 1; i < values.length; i++) {
        upTo[i] = upTo[i - 1] + (density[i] + density[i - 1]) / 2;
      }
      double sum = upTo[values.length - 1];
      return new Cumulative(
          values, Arrays.stream(upTo).map(up -> sum > 0 ? up / sum : 0).toArray());
    }

    double quantile(double probability) {
      for (int i = 1; i < values.length; i++) {
        if (upTo[i] >= probability) {
          double share = (probability - upTo[i - 1]) / (upTo[i] - upTo[i - 1]);
          return values[i - 1] + share * (values[i] - values[i - 1]);
        }
      }
      return values[values.length - 1];
    }

    double below(double value) {
      for (int i = 1; i < values.length; i++) {
        if (values[i] >= value) {
          double share = (value - values[i - 1]) / (values[i] - values[i - 1]);
          return upTo[i - 1] + share * (upTo[i] - upTo[i - 1]);
        }
      }
      return 1;
    }
  }
}
