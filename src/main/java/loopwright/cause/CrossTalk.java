package loopwright.cause;

import java.util.List;

/** Another probe too near: both numbers a little off, either way, and unsteady. */
record CrossTalk() implements Hypothesis {

  @Override
  public Cause cause() {
    return Cause.CROSS_TALK;
  }

  @Override
  public List<Variant> variants(Situation situation) {
    Likelihood disturbed =
        Likelihood.Distorted.crossed(
            Grid.normal(0, 0.03, 9),
            Grid.normal(0, 0.08, 15),
            (k, s) -> new Distortion(k, 0, 0, s),
            GapBelief.AS_SET);
    return List.of(
        Variant.rightLength(
            situation, false, 1, disturbed, Signs.none().answering(Signs.Special.INSTALLATION)));
  }
}
