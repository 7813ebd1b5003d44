package loopwright.cause;

import java.util.List;

/**
 * The target is of another alloy than the one calibrated on: a non-magnetic one raises sensitivity
 * and volts, a magnetic one of lower permeability changes them little.
 */
record OtherAlloy() implements Hypothesis {

  @Override
  public Cause cause() {
    return Cause.OTHER_ALLOY;
  }

  private static final double VOLTS_SHARE = 0.8;
  private static final double AS_SET = 0.6;

  @Override
  public List<Variant> variants(Situation situation) {
    Grid nonMagnetic = Grid.normal(0.25, 0.15, 41);
    Grid magnetic = Grid.normal(-0.05, 0.05, 17);
    return List.of(
        variant(situation, nonMagnetic, GapBelief.AS_SET, 0.6 * AS_SET),
        variant(situation, nonMagnetic, GapBelief.REGAPPED, 0.6 * (1 - AS_SET)),
        variant(situation, magnetic, GapBelief.AS_SET, 0.4 * AS_SET),
        variant(situation, magnetic, GapBelief.REGAPPED, 0.4 * (1 - AS_SET)));
  }

  private static Variant variant(
      Situation situation, Grid lnRatio, GapBelief belief, double share) {
    Likelihood.Pair shift =
        (ratio, none) -> new Distortion(VOLTS_SHARE * ratio, 0, 0, (1 - VOLTS_SHARE) * ratio);
    return Variant.rightLength(
        situation,
        belief == GapBelief.REGAPPED,
        share,
        Likelihood.Distorted.crossed(lnRatio, Grid.certain(0), shift, belief),
        Signs.none().distorted().answering(Signs.Special.INSTALLATION));
  }
}
