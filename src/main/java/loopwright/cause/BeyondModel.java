package loopwright.cause;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A length so far off that the law was not thought out for it: more than a quarter of the system
 * length. The direction is told, a length is not.
 */
record BeyondModel() implements Hypothesis {

  @Override
  public Cause cause() {
    return Cause.BEYOND_MODEL;
  }

  private static final double WIDER = 1.5;
  private static final double LONGEST = 2.2;
  private static final double SHORTEST = 0.3;
  private static final List<GapBelief> BELIEFS =
      List.of(GapBelief.AS_SET, GapBelief.REGAPPED, GapBelief.ANYWHERE);
  private static final double EACH = 1.0 / 6;

  @Override
  public List<Variant> variants(Situation situation) {
    LengthLaw law = situation.lawHere().doubted(WIDER);
    List<Variant> variants = new ArrayList<>();
    for (GapBelief belief : BELIEFS) {
      variants.add(variant(law, 1 + LengthLaw.REACH, LONGEST, belief, situation));
      variants.add(variant(law, SHORTEST, 1 - LengthLaw.REACH, belief, situation));
    }
    return variants;
  }

  private static Variant variant(
      LengthLaw law, double from, double to, GapBelief belief, Situation situation) {
    Grid lnRatios = Grid.of(-Math.log(to), -Math.log(from), 21, ratio -> 1);
    double middle = situation.systemMetres() * ((from + to) / 2 - 1);
    return new Variant(
        Optional.empty(),
        belief == GapBelief.REGAPPED,
        EACH,
        new Likelihood.Distorted(Lengths.far(law, lnRatios), belief),
        Signs.length(middle, Math.abs(middle) / 2));
  }
}
