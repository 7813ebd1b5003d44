package loopwright.standard;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import loopwright.problem.Refused;
import loopwright.units.Numbers;

/**
 * A certificate of a reference standard.
 *
 * @param id its number in the register; 0 before it is kept
 * @param dueOn the first day on which the standard may no longer be used on it
 * @param coverageFactor k of its expanded uncertainties
 */
public record Certificate(
    long id,
    String number,
    String issuer,
    LocalDate issuedOn,
    LocalDate dueOn,
    BigDecimal coverageFactor,
    List<CertifiedRange> ranges,
    String note) {
  private static final BigDecimal MOST_COVERAGE = BigDecimal.valueOf(20);

  /** Refuses what can't be; see {@link StandardProblem}. */
  public Certificate {
    ranges = List.copyOf(ranges);
    if (!issuedOn.isBefore(dueOn)) {
      throw new Refused(StandardProblem.DUE_BEFORE_ISSUE, dueOn, issuedOn);
    }
    if (coverageFactor.compareTo(BigDecimal.ONE) < 0
        || coverageFactor.compareTo(MOST_COVERAGE) > 0) {
      throw new Refused(StandardProblem.COVERAGE_FACTOR, Numbers.plain(coverageFactor));
    }
    refuseOverlaps(ranges);
  }

  private static void refuseOverlaps(List<CertifiedRange> ranges) {
    for (CertifiedRange one : ranges) {
      for (CertifiedRange other : ranges) {
        if (one.number() < other.number() && one.overlaps(other)) {
          throw new Refused(StandardProblem.RANGES_OVERLAP, one.number(), other.number());
        }
      }
    }
  }

  /** Whether it may no longer be used on that day. */
  public boolean overdueOn(LocalDate day) {
    return !day.isBefore(dueOn);
  }

  /**
   * The range that holds a value.
   *
   * @param magnitude µm, or V without sign
   */
  public Optional<CertifiedRange> rangeOf(double magnitude) {
    return ranges.stream().filter(range -> range.holds(magnitude)).findFirst();
  }

  /** {@code K-123 of Messlabor, 2026-01-05}. */
  public String inWords() {
    return number + " of " + issuer + ", " + issuedOn;
  }
}
