package loopwright.cause;

import java.util.Optional;
import loopwright.problem.Refused;

/** Makes a baseline of what a person gave, and asks back where it doesn't fit together. */
public final class GivenBaseline {
  private static final double NEAREST = 0.3;
  private static final double FARTHEST = 3;
  private static final double MIXED = 25.4;
  private static final double ABOUT = 1.7;
  private static final double NEAR_RAILS = 3;
  private static final double FAR_RAIL = -20;
  private static final double SAME_GAP = 0.02;

  private GivenBaseline() {}

  /** A line through one point. */
  public static Baseline line(Typed gap, Typed volts, Typed sensitivity) {
    Baseline line =
        Baseline.line(gap.gapMicrometres(), volts.baselineVolts(), sensitivity.sensitivity());
    double travels = line.setGapMicrometres() / line.travelMicrometres();
    if (travels < NEAREST || travels > FARTHEST) {
      throw new Refused(
          CauseProblem.NO_LINE,
          Told.volts(line.setVolts()),
          Told.sensitivity(line.setSensitivity()),
          Told.gap(line.setGapMicrometres()),
          Told.gap(line.setGapMicrometres() - line.travelMicrometres()));
    }
    return line;
  }

  /**
   * A curve; where the probe was set is the gap given, else where the curve gives the volts given,
   * else its middle.
   */
  public static Baseline curve(GivenCurve curve, Optional<Typed> gap, Optional<Typed> volts) {
    return Baseline.curve(curve.falling(), setGap(curve, gap, volts));
  }

  private static double setGap(GivenCurve curve, Optional<Typed> gap, Optional<Typed> volts) {
    if (gap.isPresent()) {
      double given = gap.get().gapMicrometres();
      if (!curve.reaches(given)) {
        throw offCurve(gap.get(), curve, Told.gap(given));
      }
      return given;
    }
    if (volts.isPresent()) {
      double given = volts.get().baselineVolts();
      if (!curve.gives(given)) {
        throw offCurve(volts.get(), curve, Told.volts(given));
      }
      return curve.gapAt(given);
    }
    return curve.middle();
  }

  private static Refused offCurve(Typed typed, GivenCurve curve, String given) {
    int last = curve.gaps().length - 1;
    return new Refused(
        CauseProblem.OFF_CURVE,
        typed.name(),
        Told.gap(curve.gaps()[0]) + ", " + Told.volts(curve.volts()[0]),
        Told.gap(curve.gaps()[last]) + ", " + Told.volts(curve.volts()[last]),
        given);
  }

  /**
   * Asks back when a sensitivity looks as if typed in the other unit; near the ends of the output,
   * where a broken loop hardly moves, a small one is taken as it is.
   */
  public static void refuseMixedUnits(Baseline baseline, double volts, Typed sensitivity) {
    double ratio = sensitivity.sensitivity() / baseline.setSensitivity();
    boolean small = about(ratio * MIXED) && volts < -NEAR_RAILS && volts > FAR_RAIL;
    if (small || about(ratio / MIXED)) {
      throw new Refused(
          CauseProblem.SENSITIVITY_UNITS,
          sensitivity.name(),
          sensitivity.text().strip(),
          sensitivity.unit().symbol(),
          small ? "a twenty-fifth" : "twenty-five times",
          Told.sensitivity(baseline.setSensitivity()));
    }
  }

  /**
   * Asks back when volts and sensitivity are said to come from gaps farther apart than a gap that
   * nobody touched may lie from the set one; own choice.
   *
   * @param gap µm, of the volts
   * @param ofSensitivity gap of the sensitivity
   */
  public static void refuseTwoGaps(Baseline baseline, double gap, Typed ofSensitivity) {
    double other = ofSensitivity.gapMicrometres();
    if (Math.abs(other - gap) > SAME_GAP * baseline.travelMicrometres()) {
      throw new Refused(
          CauseProblem.TWO_GAPS, ofSensitivity.name(), Told.gap(other), Told.gap(gap));
    }
  }

  private static boolean about(double ratio) {
    return ratio < ABOUT && ratio > 1 / ABOUT;
  }

  /** Does a curve's own voltage at the set gap contradict the one given? A sentence if so. */
  public static Optional<String> contradiction(Baseline baseline, Typed volts) {
    double given = volts.baselineVolts();
    double difference = Math.abs(baseline.setVolts() - given);
    return difference < 4 * Math.hypot(Observation.USUAL_VOLTS, baseline.voltsUncertainty())
        ? Optional.empty()
        : Optional.of(
            "The baseline curve gives "
                + Told.volts(baseline.setVolts())
                + " at "
                + Told.gap(baseline.setGapMicrometres())
                + ", not the "
                + Told.volts(given)
                + " given; the curve counts.");
  }
}
