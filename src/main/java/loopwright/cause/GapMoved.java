package loopwright.cause;

import java.util.List;

/** The loop is as it was, but the probe or the shaft stands elsewhere. */
record GapMoved() implements Hypothesis {

  @Override
  public Cause cause() {
    return Cause.GAP_MOVED;
  }

  @Override
  public List<Variant> variants(Situation situation) {
    Likelihood elsewhere = Likelihood.Distorted.by(Distortion.NONE, GapBelief.ANYWHERE);
    return List.of(Variant.rightLength(situation, false, 1, elsewhere, Signs.none()));
  }
}
