package loopwright.cause;

import java.util.ArrayList;
import java.util.List;

/**
 * The monitor counts with another scale factor than the loop has: its reading is off, the volts are
 * not.
 */
record MonitorScale() implements Hypothesis {

  @Override
  public Cause cause() {
    return Cause.MONITOR_SCALE;
  }

  private static final double[] RATIOS = {0.5, 2, 200 / 203.2, 203.2 / 200};

  @Override
  public List<Variant> variants(Situation situation) {
    List<Variant> variants = new ArrayList<>();
    for (double ratio : RATIOS) {
      variants.add(variant(situation, Grid.normal(Math.log(ratio), 0.01, 7), 0.2));
    }
    variants.add(variant(situation, Grid.normal(0, 0.15, 21), 0.2));
    return variants;
  }

  private static Variant variant(Situation situation, Grid lnSensitivity, double share) {
    return Variant.rightLength(
        situation,
        false,
        share,
        Likelihood.Distorted.crossed(
            Grid.certain(0), lnSensitivity, (k, s) -> new Distortion(0, 0, 0, s), GapBelief.AS_SET),
        Signs.none().shownWrong().answering(Signs.Special.MONITOR));
  }
}
