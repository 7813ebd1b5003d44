package loopwright.cause;

import java.util.List;

/**
 * The driver drifted or fails: level and slope off by amounts that have nothing to do with each
 * other.
 */
record DriverFault() implements Hypothesis {

  @Override
  public Cause cause() {
    return Cause.DRIVER_FAULT;
  }

  @Override
  public List<Variant> variants(Situation situation) {
    Likelihood drifted =
        Likelihood.Distorted.crossed(
            Grid.normal(0, 0.06, 15),
            Grid.normal(0, 0.5, 11),
            (k, offset) -> new Distortion(k, 0, offset, 0),
            GapBelief.AS_SET);
    return List.of(Variant.rightLength(situation, false, 1, drifted, Signs.none().distorted()));
  }
}
