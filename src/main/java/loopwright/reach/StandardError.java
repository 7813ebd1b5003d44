package loopwright.reach;

import java.math.BigDecimal;
import java.util.List;
import loopwright.curve.Curve;
import loopwright.curve.CurveReading;
import loopwright.problem.Refused;
import loopwright.standard.StandardKind;
import loopwright.units.Reported;
import loopwright.units.Unit;

/**
 * By how much a standard was wrong, range by range: shown minus true, so that positive means it
 * showed too much. Outputs count by magnitude.
 *
 * @param ranges that don't overlap; readings in none of them had no error
 */
record StandardError(StandardKind kind, List<Range> ranges) {
  private static final BigDecimal MOST_PERCENT = BigDecimal.valueOf(50);

  /**
   * One range.
   *
   * @param low µm or V, inclusive
   * @param high µm or V, inclusive
   * @param offset µm or V, the same for all readings
   * @param percent of the reading shown
   */
  record Range(int number, BigDecimal low, BigDecimal high, BigDecimal offset, BigDecimal percent) {
    Range {
      if (low.compareTo(high) >= 0) {
        throw new Refused(ReachProblem.RANGE_REVERSED, number, low, high);
      }
      if (percent.abs().compareTo(MOST_PERCENT) >= 0) {
        throw new Refused(ReachProblem.LARGE, number, percent);
      }
    }

    boolean holds(BigDecimal magnitude) {
      return magnitude.compareTo(low) >= 0 && magnitude.compareTo(high) <= 0;
    }

    /** What was really there when the standard showed that. */
    BigDecimal truth(BigDecimal shown) {
      return shown
          .subtract(offset)
          .subtract(shown.multiply(percent).movePointLeft(2))
          .max(BigDecimal.ZERO);
    }
  }

  StandardError {
    ranges = List.copyOf(ranges);
    if (ranges.isEmpty()) {
      throw new Refused(ReachProblem.NO_ERROR);
    }
    for (Range one : ranges) {
      for (Range other : ranges) {
        if (one.number() < other.number()
            && one.low().compareTo(other.high()) < 0
            && other.low().compareTo(one.high()) < 0) {
          throw new Refused(ReachProblem.RANGES_OVERLAP, one.number(), other.number());
        }
      }
    }
  }

  /** The curve as it would have been read with a right standard. */
  Curve without(Curve curve) {
    return new Curve(curve.readings().stream().map(this::without).toList());
  }

  private CurveReading without(CurveReading reading) {
    return switch (kind) {
      case MICROMETER -> CurveReading.of(reading.run(), without(reading.gap()), reading.output());
      case VOLTMETER -> CurveReading.of(reading.run(), reading.gap(), without(reading.output()));
      case OTHER -> reading;
    };
  }

  /** A correction counts for the magnitude. */
  private Reported without(Reported value) {
    Unit unit = value.unit();
    BigDecimal shown = unit.toCanonical(value.amount().abs());
    for (Range range : ranges) {
      if (range.holds(shown)) {
        BigDecimal truth = unit.fromCanonical(range.truth(shown));
        BigDecimal signed = value.amount().signum() < 0 ? truth.negate() : truth;
        return new Reported(signed.toPlainString(), unit, signed);
      }
    }
    return value;
  }
}
