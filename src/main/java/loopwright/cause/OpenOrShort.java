package loopwright.cause;

import java.util.List;

/** The probe circuit is open or shorted: the output rests at one of its ends and hardly moves. */
record OpenOrShort() implements Hypothesis {

  @Override
  public Cause cause() {
    return Cause.OPEN_OR_SHORT;
  }

  @Override
  public List<Variant> variants(Situation situation) {
    Signs signs = Signs.none().answering(Signs.Special.RESISTANCE);
    return List.of(
        Variant.rightLength(situation, false, 0.5, new AtRail(-0.7, 0.5), signs),
        Variant.rightLength(situation, false, 0.5, new AtRail(-22.5, 1.0), signs));
  }

  /**
   * @param rail V where the output rests
   * @param spread V
   */
  private record AtRail(double rail, double spread) implements Likelihood {
    private static final double LEFT = 0.05;

    /** Such an output says nothing of the gap. */
    private static final Grid ANY_GAP = Grid.normal(0, 1, 7);

    @Override
    public void addTo(Tally tally, Weighing weighing) {
      Situation situation = weighing.situation();
      double share = situation.seen().sensitivity() / situation.baseline().setSensitivity();
      double fits =
          Student8.density(situation.seen().volts() - rail, spread)
              * 2
              * share
              * Student8.density(share, LEFT);
      for (int i = 0; i < ANY_GAP.size(); i++) {
        double gap =
            situation.baseline().setGapMicrometres()
                + weighing.freeSpreadMicrometres() * ANY_GAP.values()[i];
        tally.add(
            fits
                * weighing.ofCurve(Distortion.NONE)
                * ANY_GAP.weights()[i]
                * weighing.ofKnownGap(gap),
            new Distortion(0, 0, 0, Math.log(LEFT)),
            gap);
      }
    }

    @Override
    public Typical typical(Situation situation, Tally tally) {
      return new Typical(rail, 0);
    }
  }
}
