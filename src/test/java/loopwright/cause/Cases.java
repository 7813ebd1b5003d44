package loopwright.cause;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Stream;
import loopwright.units.Length;

/**
 * The worked case of the trade: a 200 mV/mil loop on a 5.0 m driver, −9 V at 50 mil, linear from 10
 * to 90 mil; common practice, no source.
 */
final class Cases {
  static final List<BigDecimal> LENGTHS =
      Stream.of("4.0", "4.5", "5.0", "5.5", "6.0").map(BigDecimal::new).toList();
  static final Length FIVE = Length.ofMetres("5.0");

  /** The loop's own sensitivity, mV/mil. */
  static final double OWN = 202;

  /** The nominal one, mV/mil. */
  static final double STATED = 200;

  private Cases() {}

  static Baseline line(double millivoltsPerMil) {
    return Baseline.line(1270, -9.0, millivoltsPerMil / 25.4);
  }

  static Observation seen(double volts, double millivoltsPerMil) {
    return Observation.of(volts, millivoltsPerMil / 25.4);
  }

  static Diagnosis find(Baseline baseline, Observation seen) {
    return CauseFinder.find(Situation.of(FIVE, LENGTHS, baseline, seen));
  }
}
