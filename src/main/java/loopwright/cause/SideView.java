package loopwright.cause;

import java.util.List;

/**
 * The tip sees the wall of its bore or an edge beside the target: much less sensitivity at any
 * voltage.
 */
record SideView() implements Hypothesis {

  @Override
  public Cause cause() {
    return Cause.SIDE_VIEW;
  }

  @Override
  public List<Variant> variants(Situation situation) {
    Likelihood dulled =
        Likelihood.Distorted.crossed(
            Grid.normal(-0.2, 0.2, 13),
            Grid.normal(-0.5, 0.25, 25),
            (k, s) -> new Distortion(k, 0, 0, s),
            GapBelief.ANYWHERE);
    return List.of(
        Variant.rightLength(
            situation, false, 1, dulled, Signs.none().answering(Signs.Special.INSTALLATION)));
  }
}
