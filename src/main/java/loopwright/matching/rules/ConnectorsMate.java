package loopwright.matching.rules;

import java.util.List;
import loopwright.matching.Connector;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.PartKind;
import loopwright.matching.PartView;
import loopwright.matching.Rule;
import loopwright.matching.Slot;
import loopwright.matching.Verdict;
import loopwright.problem.Text;

/** Where two parts are plugged together, type and gender of the two connectors go together. */
record ConnectorsMate() implements Rule {

  @Override
  public String name() {
    return "connectors mate";
  }

  @Override
  public String basis() {
    return "Data sheets name type and gender of each connector; a joint takes one of each gender of"
        + " one type (common practice, no source).";
  }

  @Override
  public Finding judge(LoopView loop) {
    if (loop.parts().stream().noneMatch(ConnectorsMate::saysAnything)) {
      return finding(Verdict.NOT_JUDGED, "No connector is recorded for any part.");
    }
    Remarks remarks = new Remarks();
    List<Slot> slots =
        loop.slots().stream().filter(slot -> !(slot instanceof Slot.NoneFitted)).toList();
    for (int i = 1; i < slots.size(); i++) {
      Slot before = slots.get(i - 1);
      Slot after = slots.get(i);
      if (before.part().isPresent() && after.part().isPresent()) {
        joint(before.part().get(), after.part().get(), remarks);
      }
    }
    return remarks.of(this, "No two parts that follow each other are known.");
  }

  private static boolean saysAnything(PartView part) {
    return part.sheet().towardProbe() != null || part.sheet().towardDriver() != null;
  }

  private static void joint(PartView before, PartView after, Remarks remarks) {
    Connector one = before.sheet().towardDriver();
    Connector other = after.sheet().towardProbe();
    if (one == null || other == null) {
      remarks.add(
          Verdict.UNKNOWN,
          "Which connector "
              + (one == null ? before : after).words()
              + " has toward the "
              + (one == null ? "driver" : "probe")
              + " is not recorded.",
          "Enter it on the data sheet of its model.");
    } else if (one.mates(other)) {
      remarks.add(Verdict.MATCHES, "Every joint has a connector of each gender, of one type.");
    } else {
      remarks.add(
          Verdict.REFUSED,
          "%s ends in %s, %s begins with %s: they don't mate."
              .formatted(Text.capital(before.words()), one, after.words(), other),
          remedy(one, other));
    }
  }

  private static String remedy(Connector one, Connector other) {
    return one.isOfType(other)
        ? "Fit a part with the other gender, or an " + PartKind.ADAPTER.word() + " between them."
        : "Fit parts with connectors of one type, or an adapter between them.";
  }
}
