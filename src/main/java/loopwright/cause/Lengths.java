package loopwright.cause;

import java.util.ArrayList;
import java.util.List;

/** Distortions by wrong lengths, with exponent and change along the gap integrated out. */
final class Lengths {
  private static final int EXPONENTS = 17;
  private static final int SLOPES = 11;
  private static final int FEW = 9;
  private static final int FEWER = 7;
  private static final int COARSE = 13;
  private static final double WIDTH = 5.2;
  private static final double STEP = 0.04;

  private Lengths() {}

  /**
   * For one length.
   *
   * @param lnRatio logarithm of system length over fitted length
   */
  static List<Likelihood.Node> nodes(LengthLaw law, double lnRatio) {
    return nodes(law.exponents(EXPONENTS), law.slopes(SLOPES), Grid.certain(lnRatio));
  }

  /** For an unknown length near the right one. */
  static List<Likelihood.Node> near(LengthLaw law, Grid lnRatios) {
    return nodes(law.exponents(FEW), law.slopes(FEWER), lnRatios);
  }

  /** For an unknown length far off. */
  static List<Likelihood.Node> far(LengthLaw law, Grid lnRatios) {
    return nodes(law.exponents(FEW), law.slopes(SLOPES), lnRatios);
  }

  /** For one length of many. */
  static List<Likelihood.Node> coarse(LengthLaw law, double lnRatio) {
    return nodes(law.exponents(COARSE), law.slopes(FEWER), Grid.certain(lnRatio));
  }

  /**
   * For one length however far off: as many exponents as make even steps of ln k.
   *
   * @param share of all weights
   */
  static List<Likelihood.Node> fine(LengthLaw law, double lnRatio, double share) {
    int exponents = FEWER + (int) Math.ceil(WIDTH * law.nUncertainty() * Math.abs(lnRatio) / STEP);
    return nodes(law.exponents(exponents), law.slopes(FEWER), Grid.certain(lnRatio)).stream()
        .map(node -> new Likelihood.Node(node.distortion(), share * node.weight()))
        .toList();
  }

  private static List<Likelihood.Node> nodes(Grid exponents, Grid slopes, Grid lnRatios) {
    List<Likelihood.Node> nodes =
        new ArrayList<>(exponents.size() * slopes.size() * lnRatios.size());
    for (int r = 0; r < lnRatios.size(); r++) {
      for (int n = 0; n < exponents.size(); n++) {
        for (int c = 0; c < slopes.size(); c++) {
          nodes.add(
              new Likelihood.Node(
                  Distortion.along(
                      exponents.values()[n] * lnRatios.values()[r], slopes.values()[c]),
                  lnRatios.weights()[r] * exponents.weights()[n] * slopes.weights()[c]));
        }
      }
    }
    return List.copyOf(nodes);
  }
}
