package loopwright.cause;

import java.util.List;

/**
 * A wet or dirty connector, which loads the probe as more cable would: it mimics a long cable in
 * both numbers. One that takes nothing off isn't the matter, so that weights begin at zero there.
 */
record Connector() implements Hypothesis {

  @Override
  public Cause cause() {
    return Cause.CONNECTOR;
  }

  /** Logarithm of the factor that is met most; none and very much are rare. */
  private static final double USUAL = 0.08;

  private static final double MOST = 0.32;
  private static final int STEPS = 33;
  private static final double REGAPPED = 0.25;

  @Override
  public List<Variant> variants(Situation situation) {
    Grid depth =
        Grid.of(-MOST, -MOST / STEPS, STEPS, ln -> -ln * Math.exp(-0.5 * Math.pow(ln / USUAL, 2)));
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
