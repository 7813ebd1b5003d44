package loopwright.matching.rules;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import loopwright.matching.Families;
import loopwright.matching.Finding;
import loopwright.matching.InterchangeablePair;
import loopwright.matching.LoopView;
import loopwright.matching.PartKind;
import loopwright.matching.PartView;
import loopwright.matching.Rule;
import loopwright.matching.Verdict;
import loopwright.problem.Text;

/** All parts of one family, or of families that the shop has entered as interchangeable. */
record SameFamily() implements Rule {
  /** Adapters and feedthroughs belong to no family unless one is recorded. */
  private static final Set<PartKind> NEED_A_FAMILY =
      Set.of(PartKind.PROBE, PartKind.CABLE, PartKind.DRIVER, PartKind.TRANSMITTER);

  @Override
  public String name() {
    return "same family";
  }

  @Override
  public String basis() {
    return "A maker declares parts interchangeable within a family; any other pair is the shop's own"
        + " entry and names who said so (common practice, no source).";
  }

  @Override
  public Finding judge(LoopView loop) {
    List<PartView> recorded = loop.parts().stream().filter(part -> part.family() != null).toList();
    if (recorded.isEmpty()) {
      return finding(Verdict.NOT_JUDGED, "No family is recorded.");
    }
    Remarks remarks = new Remarks();
    pairs(loop.families(), recorded, remarks);
    if (loop.families().areGiven()) {
      recorded.forEach(part -> listed(loop.families(), part, remarks));
      loop.parts().stream()
          .filter(part -> part.family() == null && NEED_A_FAMILY.contains(part.kind()))
          .forEach(part -> unrecorded(part, remarks));
      if (recorded.stream().allMatch(part -> Families.same(code(part), code(recorded.get(0))))) {
        remarks.add(Verdict.MATCHES, "Family " + code(recorded.get(0)) + " throughout.");
      }
    }
    return remarks.of(this, "No list of families is given to judge by.");
  }

  private static void pairs(Families families, List<PartView> parts, Remarks remarks) {
    for (int i = 0; i < parts.size(); i++) {
      for (PartView other : parts.subList(i + 1, parts.size())) {
        pair(families, parts.get(i), other, remarks);
      }
    }
  }

  private static void pair(Families families, PartView one, PartView other, Remarks remarks) {
    String code = code(one);
    String otherCode = code(other);
    if (Families.same(code, otherCode)) {
      return;
    }
    Optional<InterchangeablePair> pair = families.pair(code, otherCode);
    if (pair.isPresent()) {
      remarks.add(
          Verdict.MATCHES,
          "%s and %s are entered as interchangeable by %s."
              .formatted(code, otherCode, pair.get().saidBy()));
    } else {
      remarks.add(
          Verdict.REFUSED,
          "%s is of family %s, %s of family %s."
              .formatted(Text.capital(one.words()), code, other.words(), otherCode),
          "Fit parts of one family, or have the pair entered as interchangeable by somebody who"
              + " answers for it.");
    }
  }

  private static void listed(Families families, PartView part, Remarks remarks) {
    String code = code(part);
    if (families.named(code).isEmpty()) {
      remarks.add(
          Verdict.UNKNOWN,
          "Family '" + code + "' is not in the list of families.",
          families.nearest(code).map(near -> "Did you mean '" + near + "'?").orElse(""));
    }
  }

  private static void unrecorded(PartView part, Remarks remarks) {
    remarks.add(Verdict.UNKNOWN, "The family of " + part.words() + " is not recorded.");
  }

  private static String code(PartView part) {
    String family = part.family();
    return family == null ? "" : family;
  }
}
