package loopwright.matching.rules;

import loopwright.matching.FamilyView;
import loopwright.matching.Finding;
import loopwright.matching.LengthSum;
import loopwright.matching.LoopView;
import loopwright.matching.Rule;
import loopwright.matching.Verdict;
import loopwright.units.Length;

/**
 * Nominal lengths fitted add up to the length that the driver is tuned for. A length on weak
 * evidence can't make a match; a balance that is off is refused on any evidence, named as such.
 */
record LengthBalance() implements Rule {
  /** Largest balance that matches where no family says otherwise, inclusive. */
  static final Length TOLERANCE = Length.ofMetres("0.05");

  @Override
  public String name() {
    return "length balance";
  }

  @Override
  public String basis() {
    return "The driver is tuned for one total nominal (electrical) length: 5 m and 9 m systems after"
        + " API Std 670, from memory. Tolerance 0.05 m unless the family says otherwise (common"
        + " practice, no source).";
  }

  @Override
  public Finding judge(LoopView loop) {
    LengthSum sum = LengthSum.of(loop);
    Length balance = sum.balance();
    Length system = sum.tunedFor();
    if (balance == null || system == null) {
      return missing(sum);
    }
    Length tolerance = toleranceOf(loop);
    String lengths =
        "%s = %s on a driver tuned for %s (%s)"
            .formatted(Words.sum(sum.terms()), sum.known(), system, system.inFeet());
    if (balance.abs().compareTo(tolerance) > 0) {
      return off(loop, sum, balance, lengths).expecting(ExpectedEffect.of(loop, balance, system));
    }
    String small =
        balance.isZero()
            ? ""
            : "; " + balance.signedMetres() + " is within the tolerance of " + tolerance;
    if (!sum.unproved().isEmpty()) {
      return finding(
          Verdict.UNKNOWN,
          lengths + small + ", but not every length is proved.",
          Words.prove(sum.unproved()));
    }
    return finding(Verdict.MATCHES, lengths + small + ".");
  }

  static Length toleranceOf(LoopView loop) {
    return loop.family().map(LengthBalance::toleranceOf).orElse(TOLERANCE);
  }

  static Length toleranceOf(FamilyView family) {
    Length own = family.lengthTolerance();
    return own == null ? TOLERANCE : own;
  }

  private Finding off(LoopView loop, LengthSum sum, Length balance, String lengths) {
    String message =
        "%s (%s) too %s: %s."
            .formatted(
                balance.abs(),
                balance.abs().inFeet(),
                balance.metres().signum() > 0 ? "long" : "short",
                lengths);
    if (!sum.unproved().isEmpty()) {
      message +=
          " Not every length is proved ("
              + Words.list(sum.unproved().stream().map(Words::known).toList())
              + ").";
    }
    return finding(Verdict.REFUSED, message, FitInstead.remedy(loop, balance));
  }

  private Finding missing(LengthSum sum) {
    String message = "Not known: " + Words.list(sum.missing()) + ".";
    Length system = sum.tunedFor();
    if (system != null && sum.known().compareTo(system) >= 0) {
      message +=
          " What is known comes to %s on a driver tuned for %s.".formatted(sum.known(), system);
    }
    return finding(Verdict.UNKNOWN, message, "Read it on the part; a length can't be guessed.");
  }
}
