package loopwright.cause;

import java.util.List;
import loopwright.units.Length;

/**
 * A confirmed wrong length with what the loop gave: evidence of its family's length law. The gap is
 * not known better than in any diagnosis: as set, moved until the volts looked right, or anywhere.
 *
 * @param systemLength that the driver is tuned for
 * @param trueLength total fitted, as it was proved
 * @param baseline of the loop
 * @param seen with the true length fitted
 */
public record ProvedLength(
    Length systemLength, Length trueLength, Baseline baseline, Observation seen) {

  /** Refuses a length in balance, which says nothing of the law. */
  public ProvedLength {
    if (systemLength.equals(trueLength)) {
      throw new IllegalArgumentException("A length in balance teaches nothing.");
    }
  }

  /** Density of what was seen, were exponent and change along the gap these. */
  double likelihood(double n, double c) {
    Situation situation =
        new Situation(
            systemLength, List.of(), baseline, seen, LengthLaw.unproved(), Priors.usual(seen.at()));
    double share = new LengthLaw(1, 1, 1, 1).overTravel(baseline.travelMicrometres() / 1000).c();
    double lnRatio =
        Math.log(systemLength.metres().doubleValue() / trueLength.metres().doubleValue());
    Tally tally = new Tally();
    new Weighing(situation)
        .add(
            tally,
            List.of(new Likelihood.Node(Distortion.along(n * lnRatio, share * c), 1)),
            GapBelief.UNKNOWN);
    return tally.weight();
  }
}
