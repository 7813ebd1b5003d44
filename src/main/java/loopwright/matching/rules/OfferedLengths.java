package loopwright.matching.rules;

import java.math.BigDecimal;
import java.util.List;
import loopwright.matching.Families;
import loopwright.matching.FamilyView;
import loopwright.matching.Finding;
import loopwright.matching.KnownLength;
import loopwright.matching.LoopView;
import loopwright.matching.PartKind;
import loopwright.matching.PartView;
import loopwright.matching.Rule;
import loopwright.matching.Verdict;
import loopwright.problem.Text;
import loopwright.units.Length;

/**
 * Each nominal length is one that the family offers. The physical length of a lead or cable is only
 * held against its nominal one to find slips: it never refuses.
 */
record OfferedLengths() implements Rule {
  private static final Band LEAD = new Band("0.8", "1.3");
  private static final Band CABLE = new Band("0.9", "1.125");

  /** Physical over nominal length, both ends inclusive. */
  private record Band(BigDecimal least, BigDecimal most) {
    Band(String least, String most) {
      this(new BigDecimal(least), new BigDecimal(most));
    }

    boolean holds(Length physical, Length nominal) {
      return physical.metres().compareTo(nominal.metres().multiply(least)) >= 0
          && physical.metres().compareTo(nominal.metres().multiply(most)) <= 0;
    }
  }

  @Override
  public String name() {
    return "lengths on offer";
  }

  @Override
  public String basis() {
    return "The family record lists the lengths its maker offers. A physical length is plausible at"
        + " 0.8 to 1.3 of a lead's nominal length and 0.9 to 1.125 of a cable's (after API Std 670,"
        + " from memory: 0.8–1.3 m for a nominal 1 m, 3.6–4.5 m for 4 m).";
  }

  @Override
  public Finding judge(LoopView loop) {
    Remarks remarks = new Remarks();
    for (PartView part : loop.parts()) {
      if (part.family() != null && loop.families().areGiven()) {
        nominal(loop, part, remarks);
      }
      physical(part, remarks);
    }
    return remarks.of(
        this,
        loop.families().areGiven()
            ? "No family that lists lengths is recorded."
            : "No list of families is given to judge by.");
  }

  private static void nominal(LoopView loop, PartView part, Remarks remarks) {
    loop.familyOf(part)
        .ifPresentOrElse(
            family -> nominal(family, part, LengthBalance.toleranceOf(family), remarks),
            () -> unlisted(loop.families(), part, remarks));
  }

  private static void unlisted(Families families, PartView part, Remarks remarks) {
    remarks.add(
        Verdict.UNKNOWN,
        "What lengths family '" + part.family() + "' offers is not known; it is not in the list.",
        families
            .nearest(String.valueOf(part.family()))
            .map(near -> "Did you mean '" + near + "'?")
            .orElse(""));
  }

  private static void nominal(FamilyView family, PartView part, Length tolerance, Remarks remarks) {
    List<Length> offers = family.lengthsOf(part.kind());
    KnownLength known = part.length();
    if (offers.isEmpty()) {
      return;
    }
    if (known == null) {
      remarks.add(Verdict.UNKNOWN, "The length of " + part.words() + " is not known.");
    } else if (offers.stream()
        .noneMatch(offer -> offer.minus(known.length()).abs().compareTo(tolerance) <= 0)) {
      remarks.add(
          Verdict.REFUSED,
          "%s (%s) is not a length that family %s offers for a %s."
              .formatted(
                  Text.capital(part.words()), known.length(), family.code(), part.kind().word()),
          "It offers " + Words.lengths(offers) + ".");
    } else if (!Words.isProved(known)) {
      remarks.add(
          Verdict.UNKNOWN,
          "The length of " + part.words() + " is on offer, but not proved.",
          Words.prove(List.of(part)));
    } else {
      remarks.add(Verdict.MATCHES, "Every length is one that the family offers.");
    }
  }

  private static void physical(PartView part, Remarks remarks) {
    Length measured = part.measuredLength();
    KnownLength known = part.length();
    if (measured == null || known == null || part.kind().place() == PartKind.Place.DRIVER_SLOT) {
      return;
    }
    Band band = part.kind() == PartKind.PROBE ? LEAD : CABLE;
    if (!band.holds(measured, known.length())) {
      remarks.add(
          Verdict.ATTENTION,
          "%s measures %s, far from its nominal %s."
              .formatted(Text.capital(part.words()), measured, known.length()),
          "Read the marking again: a physical length differs from the nominal one, but not by so"
              + " much.");
    }
  }
}
