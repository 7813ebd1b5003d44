package loopwright.demo;

/**
 * Makes up the voltages of the invented plant. Common practice and simulation, no source; it shares
 * no formula with the analysis that later judges the numbers.
 *
 * <p>The idea: a driver rectifies the amplitude of its own oscillation. Eddy currents in the shaft
 * load the tank, so the amplitude grows as the shaft moves away; a linearising network bends that
 * growth into nearly a straight line over the range it was tuned for. What is left of the bend is a
 * small wave that is peculiar to the parts. Near contact the amplitude can't fall below what the
 * electronics leak through, far away it can't rise beyond what the supply allows: both are soft
 * knees. Cable is capacitance across the tank, so more of it than the driver was tuned for damps
 * the amplitude, a little more the farther the shaft is away (there is less eddy-current loss left
 * to share the damping with); less cable does the opposite.
 *
 * <p>Magnitudes are in volts, gaps in µm; {@link #volts} gives the negative voltage.
 */
record VoltageModel(
    Nature nature, Trait trait, double fittedMetres, double tunedMetres, double gainByDrift) {
  private static final double LEAST_VOLTS = 0.7;
  private static final double MOST_VOLTS = 22.4;
  private static final double LOWER_KNEE = 0.15;
  private static final double UPPER_KNEE = 0.9;

  /**
   * What all parts of a family share.
   *
   * @param millivoltsPerMicrometre slope of the linearised range
   * @param cableWeight how much of its amplitude the tank loses for each share of cable too many
   * @param cableTilt how much more it loses at double the mid-range gap
   */
  record Nature(
      double fromMicrometres,
      double toMicrometres,
      double voltsAtFrom,
      double millivoltsPerMicrometre,
      double cableWeight,
      double cableTilt) {

    double midMicrometres() {
      return (fromMicrometres + toMicrometres) / 2;
    }

    private double halfRange() {
      return (toMicrometres - fromMicrometres) / 2;
    }
  }

  /**
   * What is peculiar to one set of parts.
   *
   * @param gain share by which the slope is off
   * @param bowMicrometres size of the residual bow, as a gap
   * @param waveMicrometres size of the residual wave, as a gap
   * @param offsetVolts the whole curve's shift
   */
  record Trait(double gain, double bowMicrometres, double waveMicrometres, double offsetVolts) {}

  /** The driver's output with the shaft at that gap, negative. */
  double volts(double gapMicrometres) {
    double straight =
        nature.voltsAtFrom
            + trait.offsetVolts
            + (1 + trait.gain + gainByDrift)
                * nature.millivoltsPerMicrometre
                / 1000
                * (gapMicrometres - nature.fromMicrometres + bend(gapMicrometres));
    double damped = straight / damping(gapMicrometres);
    return -floored(capped(damped));
  }

  /** What the linearising network leaves of the bend, as a gap in µm. */
  private double bend(double gapMicrometres) {
    double x =
        Math.max(
            -1.1, Math.min(1.1, (gapMicrometres - nature.midMicrometres()) / nature.halfRange()));
    return trait.bowMicrometres * (x * x - 0.5)
        + trait.waveMicrometres * (x * x * x - 0.75 * x) * 4;
  }

  private double damping(double gapMicrometres) {
    double excess = (fittedMetres - tunedMetres) / tunedMetres;
    double farther = gapMicrometres / nature.midMicrometres() - 1;
    return 1 + nature.cableWeight * excess * (1 + nature.cableTilt * farther);
  }

  private static double capped(double volts) {
    return -UPPER_KNEE
        * StrictMath.log(
            StrictMath.exp(-volts / UPPER_KNEE) + StrictMath.exp(-MOST_VOLTS / UPPER_KNEE));
  }

  private static double floored(double volts) {
    return LOWER_KNEE
        * StrictMath.log(
            StrictMath.exp(volts / LOWER_KNEE) + StrictMath.exp(LEAST_VOLTS / LOWER_KNEE));
  }

  /** The gap at which the output reads that voltage: where a technician stops turning the probe. */
  double gapAt(double volts) {
    double near = 0;
    double far = 3 * nature.toMicrometres;
    for (int i = 0; i < 60; i++) {
      double middle = (near + far) / 2;
      if (volts(middle) > volts) {
        near = middle;
      } else {
        far = middle;
      }
    }
    return near;
  }
}
