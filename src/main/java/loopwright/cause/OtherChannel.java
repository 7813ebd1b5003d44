package loopwright.cause;

import java.util.List;

/** The numbers are those of another loop, landed on these terminals: healthy, but another gap. */
record OtherChannel() implements Hypothesis {

  @Override
  public Cause cause() {
    return Cause.OTHER_CHANNEL;
  }

  @Override
  public List<Variant> variants(Situation situation) {
    Likelihood another =
        Likelihood.Distorted.crossed(
            Grid.certain(0),
            Grid.normal(0, 0.02, 7),
            (k, s) -> new Distortion(k, 0, 0, s),
            GapBelief.ANYWHERE);
    return List.of(
        Variant.rightLength(
            situation, false, 1, another, Signs.none().answering(Signs.Special.WIRING)));
  }
}
