package loopwright.cause;

import java.util.List;

/**
 * A wet or dirty connector, which loads the probe as more cable would: it mimics a long cable in
 * both numbers.
 */
record Connector() implements Hypothesis {

  @Override
  public Cause cause() {
    return Cause.CONNECTOR;
  }

  private static final double DEPTH = 0.12;
  private static final double REGAPPED = 0.25;

  @Override
  public List<Variant> variants(Situation situation) {
    Grid depth = Grid.belowZero(DEPTH, 21);
    Grid along = situation.lawHere().slopes(9);
    Signs signs = Signs.none().distorted().answering(Signs.Special.CONNECTOR);
    return List.of(
        Variant.rightLength(
            situation,
            false,
            1 - REGAPPED,
            Likelihood.Distorted.crossed(depth, along, Distortion::along, GapBelief.AS_SET),
            signs),
        Variant.rightLength(
            situation,
            true,
            REGAPPED,
            Likelihood.Distorted.crossed(depth, along, Distortion::along, GapBelief.REGAPPED),
            signs));
  }
}
