package loopwright.matching.rules;

import java.util.Optional;
import loopwright.matching.Approval;
import loopwright.matching.AreaClass;
import loopwright.matching.Fact;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.PartView;
import loopwright.matching.Rule;
import loopwright.matching.Verdict;
import loopwright.problem.Text;

/**
 * Parts are approved for the area they stand in, and an intrinsically safe circuit adds up. Says
 * <em>refused</em>, <em>unknown</em> or <em>attention</em>, but never <em>matches</em>: what is
 * consistent here still rests with the Ex dossier.
 */
record AreaApproval() implements Rule {

  @Override
  public String name() {
    return "area approval";
  }

  @Override
  public String basis() {
    return "Zone, gas group and temperature class after IEC 60079-0 and 60079-14; Uo ≤ Ui, Io ≤ Ii,"
        + " Po ≤ Pi, Ci + cable ≤ Co, Li + cable ≤ Lo after IEC 60079-14 and 60079-25 (all from"
        + " memory). Consistent is not approved: the Ex dossier decides.";
  }

  @Override
  public boolean blocksAssemblyWhenUnknown() {
    return false;
  }

  @Override
  public Finding judge(LoopView loop) {
    if (!loop.facts().contains(Fact.AREA)) {
      return finding(Verdict.NOT_JUDGED, "This rule was given no area classification.");
    }
    String text = loop.place().areaClass();
    if (text.isBlank()) {
      return finding(
          Verdict.UNKNOWN,
          "Whether the point is in a hazardous area is not recorded.",
          "Enter the area at the point, such as Zone 2 IIB T3, or 'safe area'.");
    }
    if (AreaClass.isSafe(text)) {
      return finding(Verdict.NOT_JUDGED, "The point is in no hazardous area.");
    }
    if (AreaClass.isByDivision(text)) {
      return finding(
          Verdict.NOT_JUDGED,
          "The area is told by divisions (" + text + "); only zones are judged here.");
    }
    Optional<AreaClass> area = AreaClass.read(text);
    return area.isPresent()
        ? judge(loop, area.get())
        : finding(
            Verdict.UNKNOWN,
            "Area '" + text + "' can't be read.",
            "Write zone, gas group and temperature class, such as Zone 2 IIB T3.");
  }

  private Finding judge(LoopView loop, AreaClass area) {
    Remarks remarks = new Remarks();
    Optional<PartView> driver = loop.driver().part();
    Optional<Approval> drivers = driver.map(part -> part.sheet().approval());
    for (PartView part : loop.parts()) {
      Approval own = part.sheet().approval();
      if (own != null) {
        held(part, own, area, remarks);
      } else if (drivers.filter(Approval::coversChain).isEmpty()) {
        remarks.add(
            Verdict.UNKNOWN,
            "No approval for hazardous areas is recorded for " + part.words() + ".",
            "Enter it on the data sheet of its model.");
      }
    }
    if (driver.isPresent() && drivers.filter(Approval::intrinsicallySafe).isPresent()) {
      EntitySums.look(loop, driver.get(), remarks);
    }
    remarks.add(
        Verdict.NOT_JUDGED,
        "Consistent with the data entered for " + area + "; the Ex dossier decides.");
    return remarks.of(this, "No part is recorded.");
  }

  private static void held(PartView part, Approval approval, AreaClass area, Remarks remarks) {
    if (!approval.level().isAtLeast(area.level())
        || !approval.group().covers(area.group())
        || !approval.temperature().covers(area.temperature())) {
      remarks.add(
          Verdict.REFUSED,
          "%s is approved for %s, the area is %s and asks for %s %s %s."
              .formatted(
                  Text.capital(part.words()),
                  approval,
                  area,
                  area.level().word(),
                  area.group(),
                  area.temperature()),
          "Fit a part that is approved for the area.");
    } else if (approval.certificate().isBlank()) {
      remarks.add(
          Verdict.UNKNOWN,
          "The number of the certificate of " + part.words() + " is not recorded.",
          "Enter it on the data sheet of its model.");
    }
  }
}
