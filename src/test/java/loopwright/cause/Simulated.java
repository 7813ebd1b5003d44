package loopwright.cause;

import java.util.Random;
import loopwright.units.Length;

/**
 * A simulated fault as a technician would find it: a loop of its own scatter, a baseline measured
 * when it was right, then the fault, then two numbers with noise.
 */
final class Simulated {
  private static final double SET_GAP = 1270;

  private final Random random;
  private final double system;
  private final SimulatedLoop loop;
  private final Baseline baseline;

  Simulated(SimulatedLoop.Circuit design, long seed) {
    this.random = new Random(seed);
    this.system = design.lineMetres();
    this.loop = new SimulatedLoop(design);
    SimulatedLoop.Circuit nominal = loop.circuit();
    loop.with(
        nominal.withCoil(
            nominal.resistance() * spread(0.02),
            nominal.coupling() * spread(0.015),
            nominal.secondaryQ() * spread(0.03)));
    this.baseline =
        Baseline.line(
            SET_GAP,
            loop.volts(SET_GAP) + 0.02 * random.nextGaussian(),
            loop.sensitivity(SET_GAP) * spread(0.005));
  }

  private double spread(double relative) {
    return Math.exp(relative * random.nextGaussian());
  }

  SimulatedLoop loop() {
    return loop;
  }

  Baseline baseline() {
    return baseline;
  }

  double uniform(double from, double to) {
    return from + (to - from) * random.nextDouble();
  }

  boolean chance(double probability) {
    return random.nextDouble() < probability;
  }

  void fit(double extraMetres) {
    loop.with(loop.circuit().withLine(system + extraMetres));
  }

  /** Untouched, or moved until the volts looked right. */
  double gap(boolean regapped) {
    return regapped
        ? loop.gapFor(baseline.setVolts() + 0.15 * random.nextGaussian())
        : SET_GAP + 15 * random.nextGaussian();
  }

  Diagnosis diagnose(double gap) {
    return diagnose(gap, 1, 1);
  }

  /**
   * @param voltsFactor what meter or load make of the output
   * @param sensitivityFactor what they and the reference make of the sensitivity
   */
  Diagnosis diagnose(double gap, double voltsFactor, double sensitivityFactor) {
    Observation seen =
        Observation.of(
            voltsFactor * loop.volts(gap) + 0.05 * random.nextGaussian(),
            Math.max(1e-3, sensitivityFactor * loop.sensitivity(gap) * spread(0.015)));
    Length length = Length.ofMetres(Double.toString(system));
    return CauseFinder.find(
        Situation.of(length, FittedLengths.usual(length).metres(), baseline, seen));
  }
}
