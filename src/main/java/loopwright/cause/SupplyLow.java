package loopwright.cause;

import java.util.List;

/**
 * Too little supply at the driver: the output can't go as far down, and near that end it hardly
 * moves.
 */
record SupplyLow() implements Hypothesis {
  /** Near its lowest output a loop's sensitivity tells that output to a hundredth of a volt. */
  private static final int STEPS = 801;

  @Override
  public Cause cause() {
    return Cause.SUPPLY_LOW;
  }

  @Override
  public List<Variant> variants(Situation situation) {
    return List.of(
        Variant.rightLength(
            situation,
            false,
            1,
            new Clipped(Grid.normal(-15, 2.5, STEPS)),
            Signs.none().answering(Signs.Special.SUPPLY)));
  }

  /** Near the lowest output the sensitivity fades out over some tenths of a volt. */
  private record Clipped(Grid lowestVolts) implements Likelihood {
    private static final double FADE = 0.6;
    private static final double SPREAD = 2.5;

    @Override
    public void addTo(Tally tally, Weighing weighing) {
      Situation situation = weighing.situation();
      double volts = situation.seen().volts();
      double gap = Distortion.NONE.gapAt(situation.baseline(), volts);
      double density = Student8.density(volts - situation.baseline().setVolts(), SPREAD);
      for (int i = 0; i < lowestVolts.size(); i++) {
        double left = left(volts, lowestVolts.values()[i]);
        double sensitivity = left * situation.baseline().sensitivity(gap);
        double fits = density * weighing.ofSensitivity(sensitivity) * weighing.ofKnownGap(gap);
        tally.add(
            lowestVolts.weights()[i] * fits * weighing.ofCurve(Distortion.NONE),
            new Distortion(0, 0, 0, Math.log(left)),
            gap);
      }
    }

    private static double left(double volts, double lowest) {
      return 1 / (1 + Math.exp((lowest - volts) / FADE));
    }

    @Override
    public Typical typical(Situation situation, Tally tally) {
      double left = Math.exp(tally.distortion().lnSensitivity());
      return new Typical(situation.seen().volts(), left * situation.baseline().setSensitivity());
    }
  }
}
