package loopwright.cause;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import loopwright.units.Length;

/**
 * All that is known before hypotheses are weighed.
 *
 * @param systemLength that the driver is tuned for
 * @param lengths total fitted lengths that are possible, as given
 * @param baseline of the loop
 * @param seen now
 * @param law of wrong lengths
 * @param priors of the causes
 */
public record Situation(
    Length systemLength,
    List<BigDecimal> lengths,
    Baseline baseline,
    Observation seen,
    LengthLaw law,
    Priors priors) {
  public Situation {
    lengths = List.copyOf(lengths);
  }

  /** With the usual priors and an unproved law. */
  public static Situation of(
      Length systemLength, List<BigDecimal> lengths, Baseline baseline, Observation seen) {
    return new Situation(
        systemLength, lengths, baseline, seen, LengthLaw.unproved(), Priors.usual(seen.at()));
  }

  /** The law as far as it holds for this baseline. */
  LengthLaw lawHere() {
    return law.doubted(baseline.doubtOfLaw()).overTravel(baseline.travelMicrometres() / 1000);
  }

  /** The system length, written as it was given among the lengths. */
  BigDecimal rightLength() {
    BigDecimal system = systemLength.metres();
    return lengths.stream()
        .filter(length -> length.compareTo(system) == 0)
        .findFirst()
        .orElse(system);
  }

  double systemMetres() {
    return systemLength.metres().doubleValue();
  }

  Optional<PresentCurve.Shape> shapeSeen() {
    return seen.curve().map(curve -> curve.shape(baseline));
  }

  boolean isWithinReach(double metres) {
    return Math.abs(metres - systemMetres()) <= LengthLaw.REACH * systemMetres() + 1e-9;
  }
}
