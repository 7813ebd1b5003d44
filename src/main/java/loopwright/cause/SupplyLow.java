package loopwright.cause;

import java.util.List;

/**
 * Too little supply at the driver: the output can't go as far down. Where it would have to, it
 * rests near its lowest output and hardly moves; somewhat above, volts and sensitivity are both a
 * little off.
 */
record SupplyLow() implements Hypothesis {
  private static final int STEPS = 401;

  /** V below the set output from which a lowest output begins to show there. */
  private static final double SHOWS = 1;

  private static final double HIGHEST = -1;

  /** V; the farther a lowest output is from the set one, the rarer. */
  private static final double RARER = 4;

  /** V over which the output fades out; drivers differ. */
  private static final double[] FADES = {0.15, 0.3, 0.6};

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
            new Clipped(lowest(situation.baseline().setVolts()), FADES),
            Signs.none().answering(Signs.Special.SUPPLY)));
  }

  /** Only one that shows at the set gap is the matter with these numbers. */
  private static Grid lowest(double setVolts) {
    return Grid.of(
        setVolts - SHOWS,
        HIGHEST,
        STEPS,
        volts -> Math.exp(-0.5 * Math.pow((volts - setVolts) / RARER, 2)));
  }

  /**
   * Near the lowest output L the curve turns level: V = L + f · ln(1 + exp((V₀ − L)/f)), of which
   * the slope is the share 1/(1 + exp((L − V₀)/f)) of what it was; V₀ is what the probe, still
   * where it was set, would give with enough supply. Own model.
   */
  private record Clipped(Grid lowestVolts, double[] fades) implements Likelihood {
    private static final Grid ABOUT_SET = Grid.normal(0, 1, 7);

    /** Share of the sensitivity that ripple still shows of an output at rest. */
    private static final double RIPPLE = 0.01;

    private static final double LEAST_SHARE = 1e-4;

    /** Beyond it the curve is as straight as numbers tell. */
    private static final double MOST_OVER = 30;

    @Override
    public void addTo(Tally tally, Weighing weighing) {
      Baseline baseline = weighing.situation().baseline();
      for (int j = 0; j < ABOUT_SET.size(); j++) {
        double gap =
            baseline.setGapMicrometres() + weighing.setSpreadMicrometres() * ABOUT_SET.values()[j];
        double weight =
            ABOUT_SET.weights()[j]
                * weighing.ofKnownGap(gap)
                * weighing.ofCurve(Distortion.NONE)
                / fades.length;
        for (double fade : fades) {
          addTo(tally, weighing, gap, fade, weight);
        }
      }
    }

    private void addTo(Tally tally, Weighing weighing, double gap, double fade, double weight) {
      Situation situation = weighing.situation();
      double enough = situation.baseline().volts(gap);
      double seen = situation.seen().sensitivity() / situation.baseline().sensitivity(gap);
      double spread = Math.hypot(situation.seen().voltsUncertainty(), lowestVolts.step());
      for (int i = 0; i < lowestVolts.size(); i++) {
        double lowest = lowestVolts.values()[i];
        double over = Math.exp(Math.min(MOST_OVER, (enough - lowest) / fade));
        double share = over / (1 + over);
        double volts = lowest + fade * Math.log1p(over);
        double ofVolts = Student8.density(situation.seen().volts() - volts, spread);
        double ofShare =
            seen * Student8.density(seen - share, Math.hypot(RIPPLE, share * weighing.relative()));
        tally.add(
            weight * lowestVolts.weights()[i] * ofVolts * ofShare,
            new Distortion(0, 0, 0, Math.log(Math.max(LEAST_SHARE, share))),
            gap);
      }
    }

    @Override
    public Typical typical(Situation situation, Tally tally) {
      double left = Math.exp(tally.distortion().lnSensitivity());
      return new Typical(situation.seen().volts(), left * situation.baseline().setSensitivity());
    }
  }
}
