package loopwright.cause;

/**
 * What a situation says about where the probe may stand, worked out once.
 *
 * @param setGap µm
 * @param setVolts V, there
 * @param ofSetGap how far a gap that nobody touched lies from the set one, µm
 * @param ofFreeGap how far a gap that somebody moved lies from it, µm
 * @param ofRegappedVolts how nearly a voltage is set right, V
 * @param ofKnownGap standard uncertainty of a gap known by other means, µm
 * @param ofSensitivity of the logarithm of a measured sensitivity about the predicted one
 */
record Spreads(
    double setGap,
    double setVolts,
    double ofSetGap,
    double ofFreeGap,
    double ofRegappedVolts,
    double ofKnownGap,
    double ofSensitivity) {
  private static final double SET_SHARE = 0.02;
  private static final double FREE_SHARE = 0.3;
  private static final double KNOWN_SHARE = 0.01;
  private static final double KNOWN_AT_BEST = 10;
  private static final double REGAPPED_VOLTS = 0.25;

  static Spreads of(Situation situation) {
    Baseline baseline = situation.baseline();
    double travel = baseline.travelMicrometres();
    double baselineSpread = 1000 * baseline.voltsUncertainty() / baseline.setSensitivity();
    return new Spreads(
        baseline.setGapMicrometres(),
        baseline.setVolts(),
        Math.hypot(SET_SHARE * travel, baselineSpread),
        FREE_SHARE * travel,
        Math.hypot(REGAPPED_VOLTS, baseline.voltsUncertainty()),
        Math.max(KNOWN_AT_BEST, KNOWN_SHARE * travel),
        Math.hypot(situation.seen().sensitivityUncertainty(), baseline.sensitivityUncertainty()));
  }
}
