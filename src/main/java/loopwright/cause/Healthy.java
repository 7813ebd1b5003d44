package loopwright.cause;

import java.util.List;

/** Everything is as it was; the gap hardly moved. */
record Healthy() implements Hypothesis {

  @Override
  public Cause cause() {
    return Cause.HEALTHY;
  }

  @Override
  public List<Variant> variants(Situation situation) {
    Likelihood asBefore = Likelihood.Distorted.by(Distortion.NONE, GapBelief.AS_SET);
    return List.of(Variant.rightLength(situation, false, 1, asBefore, Signs.none()));
  }
}
