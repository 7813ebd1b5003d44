package loopwright.cause;

import java.util.ArrayList;
import java.util.List;

/**
 * A probe or driver of another scale factor: half, double, or the 1.6 % between 200 mV/mil and 8
 * mV/µm.
 */
record OtherScale() implements Hypothesis {

  @Override
  public Cause cause() {
    return Cause.OTHER_SCALE;
  }

  private static final double[] FACTORS = {0.5, 2, 200 / 203.2, 203.2 / 200};
  private static final double SPREAD = 0.03;
  private static final double AS_SET = 0.5;

  @Override
  public List<Variant> variants(Situation situation) {
    List<Variant> variants = new ArrayList<>();
    Signs signs = Signs.none().marked(Signs.Labels.OTHER_PART).distorted();
    for (double factor : FACTORS) {
      Grid about = Grid.normal(Math.log(factor), SPREAD, 9);
      variants.add(
          Variant.rightLength(
              situation,
              false,
              AS_SET / FACTORS.length,
              Likelihood.Distorted.scaled(about, GapBelief.AS_SET),
              signs));
      variants.add(
          Variant.rightLength(
              situation,
              false,
              (1 - AS_SET) / FACTORS.length,
              Likelihood.Distorted.scaled(about, GapBelief.ANYWHERE),
              signs));
    }
    return variants;
  }
}
