package loopwright.register;

import java.util.ArrayList;
import java.util.List;
import loopwright.matching.CableUse;
import loopwright.matching.PartKind;
import loopwright.units.Length;

/** Which of a family's leads and cables add up to which of its system lengths. */
record LengthSums(List<Sum> sums, List<OfferedLength> servingNothing) {

  /**
   * One system length.
   *
   * @param pairs lead and cable, or a lead alone
   */
  record Sum(OfferedLength system, List<String> pairs) {}

  static LengthSums of(FamilyDetails family) {
    List<OfferedLength> leads = family.lengthsOf(PartKind.PROBE);
    List<OfferedLength> cables = family.lengthsOf(PartKind.CABLE);
    List<OfferedLength> unused = new ArrayList<>(leads);
    unused.addAll(cables);
    List<Sum> sums = new ArrayList<>();
    for (OfferedLength system : family.lengthsOf(PartKind.DRIVER)) {
      List<String> pairs = new ArrayList<>();
      for (OfferedLength lead : leads) {
        if (family.cableUse() != CableUse.REQUIRED && fits(family, system, lead.length())) {
          pairs.add(lead.typed() + " alone");
          unused.remove(lead);
        }
        for (OfferedLength cable : cables) {
          if (family.cableUse() != CableUse.NONE
              && fits(family, system, lead.length().plus(cable.length()))) {
            pairs.add(lead.typed() + " + " + cable.typed());
            unused.remove(lead);
            unused.remove(cable);
          }
        }
      }
      sums.add(new Sum(system, pairs));
    }
    return new LengthSums(sums, sums.isEmpty() ? List.of() : unused);
  }

  private static boolean fits(FamilyDetails family, OfferedLength system, Length sum) {
    return sum.minus(system.length()).abs().compareTo(family.lengthTolerance()) <= 0;
  }
}
