package loopwright.cause;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A cable was cut and re-terminated, or its electrical length isn't what its marking says: a total
 * that is sold nowhere, rather shorter than longer.
 */
record OddLength() implements Hypothesis {

  @Override
  public Cause cause() {
    return Cause.ODD_LENGTH;
  }

  private static final double SHORTENED = -0.1;
  private static final double SPREAD = 0.25;
  private static final double REGAPPED = 0.4;

  @Override
  public List<Variant> variants(Situation situation) {
    double system = situation.systemMetres();
    Grid extra = Grid.normal(SHORTENED, SPREAD, 15).above(-0.9 * system);
    double[] lnRatios =
        Arrays.stream(extra.values()).map(metres -> Math.log(system / (system + metres))).toArray();
    List<Likelihood.Node> nodes =
        Lengths.near(situation.lawHere(), new Grid(lnRatios, extra.weights()));
    Signs signs = Signs.length(SHORTENED, SPREAD).marked(Signs.Labels.AS_RECORDED);
    return List.of(
        new Variant(
            Optional.empty(),
            false,
            1 - REGAPPED,
            new Likelihood.Distorted(nodes, GapBelief.AS_SET),
            signs),
        new Variant(
            Optional.empty(),
            true,
            REGAPPED,
            new Likelihood.Distorted(nodes, GapBelief.REGAPPED),
            signs));
  }
}
