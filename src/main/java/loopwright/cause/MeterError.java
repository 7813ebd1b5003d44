package loopwright.cause;

import java.util.List;

/**
 * One of the two instruments is wrong: the voltmeter, or what the displacement was compared with.
 */
record MeterError() implements Hypothesis {

  @Override
  public Cause cause() {
    return Cause.METER_ERROR;
  }

  private static final double EACH = 0.5;

  @Override
  public List<Variant> variants(Situation situation) {
    Signs signs = Signs.none().shownWrong().answering(Signs.Special.METER);
    Likelihood reference =
        Likelihood.Distorted.crossed(
            Grid.certain(0),
            Grid.normal(0, 0.07, 21),
            (none, s) -> new Distortion(0, 0, 0, s),
            GapBelief.AS_SET);
    Likelihood voltmeter =
        Likelihood.Distorted.crossed(
            Grid.certain(0),
            Grid.normal(0, 0.4, 21),
            (none, offset) -> new Distortion(0, 0, offset, 0),
            GapBelief.AS_SET);
    return List.of(
        Variant.rightLength(situation, false, EACH, reference, signs),
        Variant.rightLength(situation, false, EACH, voltmeter, signs));
  }
}
