package loopwright.matching.rules;

import loopwright.matching.CableUse;
import loopwright.matching.FamilyView;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.PartKind;
import loopwright.matching.PartView;
import loopwright.matching.Rule;
import loopwright.matching.Slot;
import loopwright.matching.Verdict;

/** One probe, one driver, and between them the path that the family calls for. */
record Complete() implements Rule {

  @Override
  public String name() {
    return "complete";
  }

  @Override
  public String basis() {
    return "A loop is one probe, the path its family calls for, and one driver; a cable added to a"
        + " full-length lead is a classic error (common practice, no source).";
  }

  @Override
  public Finding judge(LoopView loop) {
    Remarks remarks = new Remarks();
    end(loop.probe(), PartKind.PROBE, remarks);
    loop.path().forEach(slot -> look(slot, PartKind.CABLE, remarks));
    end(loop.driver(), PartKind.DRIVER, remarks);
    loop.barrier().part().ifPresent(part -> place(part, PartKind.Place.AFTER_DRIVER, remarks));
    if (loop.path().stream().allMatch(Slot::isKnown)) {
      cables(loop, remarks);
    }
    remarks.add(Verdict.MATCHES, whatIsFitted(loop));
    return remarks.of(this, "");
  }

  private static void end(Slot slot, PartKind wanted, Remarks remarks) {
    if (slot instanceof Slot.NoneFitted) {
      remarks.add(Verdict.REFUSED, "No " + wanted.word() + " is fitted.");
    }
    look(slot, wanted, remarks);
  }

  private static void look(Slot slot, PartKind wanted, Remarks remarks) {
    if (slot instanceof Slot.Unknown unknown) {
      String why = unknown.why().isEmpty() ? "" : ": " + unknown.why();
      remarks.add(
          Verdict.UNKNOWN,
          "Which " + wanted.word() + " is fitted is not known" + why + ".",
          "Survey the loop.");
    }
    if (slot instanceof Slot.NotRecorded) {
      remarks.add(
          Verdict.UNKNOWN,
          "No " + wanted.word() + " is recorded.",
          "Read the label and record it, or record that none is fitted.");
    }
    slot.part().ifPresent(part -> place(part, wanted.place(), remarks));
    slot.part().filter(part -> !part.name().isIdentified()).ifPresent(part -> name(part, remarks));
  }

  private static void name(PartView part, Remarks remarks) {
    remarks.add(
        Verdict.ATTENTION,
        "The " + part.words() + " is fitted but not identified.",
        "Record its serial, or give it a shop number.");
  }

  private static void place(PartView part, PartKind.Place place, Remarks remarks) {
    if (part.kind().place() != place) {
      remarks.add(Verdict.REFUSED, Words.sentence(part.words() + " stands in the wrong slot"));
    }
  }

  private static void cables(LoopView loop, Remarks remarks) {
    long cables = loop.pathParts().stream().filter(p -> p.kind() == PartKind.CABLE).count();
    loop.family().ifPresent(family -> cableUse(family, cables, remarks));
    boolean forbidden = loop.family().map(FamilyView::forbidsTwoCables).orElse(false);
    if (cables > 1) {
      remarks.add(
          forbidden ? Verdict.REFUSED : Verdict.ATTENTION,
          cables
              + " extension cables stand in series"
              + (forbidden ? ", which the family forbids." : "."),
          "Fit one cable of the full length.");
    }
  }

  private static void cableUse(FamilyView family, long cables, Remarks remarks) {
    if (family.cableUse() == CableUse.REQUIRED && cables == 0) {
      remarks.add(
          Verdict.REFUSED,
          "Family " + family.code() + " needs an extension cable, and none is fitted.");
    }
    if (family.cableUse() == CableUse.NONE && cables > 0) {
      remarks.add(
          Verdict.REFUSED,
          "Family " + family.code() + " takes no extension cable, and one is fitted.",
          "Plug the probe's lead straight into the driver. " + Words.LOOK_FIRST);
    }
  }

  private static String whatIsFitted(LoopView loop) {
    return loop.pathParts().isEmpty()
        ? "Probe and driver are recorded, no extension cable is fitted."
        : "Probe, path and driver are recorded.";
  }
}
