package loopwright.cause;

import java.util.List;

/**
 * A meter or a barrier that loads the output: volts and sensitivity drop by one and the same
 * factor.
 */
record Loading() implements Hypothesis {

  @Override
  public Cause cause() {
    return Cause.LOADING;
  }

  private static final double DEPTH = 0.08;
  private static final double REGAPPED = 0.15;

  @Override
  public List<Variant> variants(Situation situation) {
    Grid depth = Grid.belowZero(DEPTH, 21);
    Signs signs = Signs.none().shownWrong().answering(Signs.Special.METER);
    return List.of(
        Variant.rightLength(
            situation,
            false,
            1 - REGAPPED,
            Likelihood.Distorted.scaled(depth, GapBelief.AS_SET),
            signs),
        Variant.rightLength(
            situation,
            true,
            REGAPPED,
            Likelihood.Distorted.scaled(depth, GapBelief.REGAPPED),
            signs));
  }
}
