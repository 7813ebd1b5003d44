package loopwright.matching.rules;

import java.util.Optional;
import loopwright.matching.Fact;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.PartState;
import loopwright.matching.PartView;
import loopwright.matching.Rule;
import loopwright.matching.Verdict;

/** No part is quarantined, scrapped, promised to another job, or taken out of a kit. */
record FreeToUse() implements Rule {

  @Override
  public String name() {
    return "free to use";
  }

  @Override
  public String basis() {
    return "The state that the shop has given the part (common practice, no source).";
  }

  @Override
  public Finding judge(LoopView loop) {
    if (!loop.facts().contains(Fact.STATE)) {
      return finding(Verdict.NOT_JUDGED, "The source doesn't say what state parts are in.");
    }
    Remarks remarks = new Remarks();
    loop.everyPart().forEach(part -> look(part, remarks));
    return remarks.of(this, "No part is recorded.");
  }

  private static void look(PartView part, Remarks remarks) {
    if (part.state() == PartState.QUARANTINED || part.state() == PartState.SCRAPPED) {
      remarks.add(
          Verdict.REFUSED,
          Words.sentence(part.words() + " is " + part.state().word()),
          "Fit another, or release it if its state is wrong.");
    }
    Optional.ofNullable(part.promisedTo())
        .ifPresent(
            job ->
                remarks.add(
                    Verdict.ATTENTION,
                    Words.sentence(part.words() + " is promised to " + job),
                    "Tell its planner, or fit another."));
    Optional.ofNullable(part.keptWith())
        .ifPresent(
            kit ->
                remarks.add(
                    Verdict.ATTENTION,
                    Words.sentence(part.words() + " belongs to " + kit),
                    "Fit the whole kit, take another part, or dissolve the kit."));
    remarks.add(Verdict.MATCHES, "No part is quarantined, scrapped or promised elsewhere.");
  }
}
