package loopwright.reach;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Collectors;
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

    private String inWords(String unit) {
      return "%s to %s %s: %s %s and %s %% of the reading"
          .formatted(plain(low), plain(high), unit, signed(offset), unit, signed(percent));
    }

    private static String plain(BigDecimal number) {
      return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }

    private static String signed(BigDecimal number) {
      return (number.signum() > 0 ? "+" : "") + plain(number);
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

  /** Range by range, for instance {@code 0 to 2500 µm: +0.5 µm and +0.4 % of the reading}. */
  String inWords() {
    String unit = kind.units().stream().findFirst().map(Unit::symbol).orElse("");
    return ranges.stream().map(range -> range.inWords(unit)).collect(Collectors.joining("; "));
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
