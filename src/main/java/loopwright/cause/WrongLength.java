package loopwright.cause;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Too much or too little cable, by each total length that is possible, each also with the probe
 * moved afterwards until the voltage looked right. Small errors are likelier than large ones before
 * measuring: half a metre counts {@link #halfToWhole} times as much as a whole one.
 */
record WrongLength(Cause cause) implements Hypothesis {
  /** Metres over which the weight of an error falls to 37 %; common practice, no source. */
  private static final double FALL = 1.0;

  private static final double REGAPPED = 0.4;
  private static final double SAME = 1e-6;

  /** How much likelier half a metre too much is than a whole one, before measuring. */
  static double halfToWhole() {
    return weight(0.5) / weight(1.0);
  }

  static double weight(double extraMetres) {
    return Math.exp(-Math.abs(extraMetres) / FALL);
  }

  @Override
  public List<Variant> variants(Situation situation) {
    List<BigDecimal> lengths =
        situation.lengths().stream()
            .filter(length -> situation.isWithinReach(length.doubleValue()))
            .filter(length -> isOnThisSide(extra(situation, length)))
            .toList();
    double sum = lengths.stream().mapToDouble(length -> weight(extra(situation, length))).sum();
    List<Variant> variants = new ArrayList<>();
    for (BigDecimal length : lengths) {
      double share = weight(extra(situation, length)) / sum;
      List<Likelihood.Node> nodes =
          Lengths.nodes(
              situation.lawHere(), Math.log(situation.systemMetres() / length.doubleValue()));
      variants.add(variant(situation, length, nodes, GapBelief.AS_SET, share * (1 - REGAPPED)));
      variants.add(variant(situation, length, nodes, GapBelief.REGAPPED, share * REGAPPED));
    }
    return variants;
  }

  private boolean isOnThisSide(double extra) {
    return cause == Cause.OVER_LENGTH ? extra > SAME : extra < -SAME;
  }

  private static double extra(Situation situation, BigDecimal length) {
    return length.doubleValue() - situation.systemMetres();
  }

  private static Variant variant(
      Situation situation,
      BigDecimal length,
      List<Likelihood.Node> nodes,
      GapBelief belief,
      double share) {
    return new Variant(
        Optional.of(length),
        belief == GapBelief.REGAPPED,
        share,
        new Likelihood.Distorted(nodes, belief),
        Signs.length(extra(situation, length), 0));
  }
}
