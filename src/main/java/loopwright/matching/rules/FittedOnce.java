package loopwright.matching.rules;

import java.util.List;
import java.util.stream.Collectors;
import loopwright.matching.Elsewhere;
import loopwright.matching.Fact;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.PartView;
import loopwright.matching.Rule;
import loopwright.matching.Verdict;

/** No part of the loop is recorded as fitted in another place at the same time. */
record FittedOnce() implements Rule {
  private static final int MOST_NAMED = 3;

  @Override
  public String name() {
    return "not fitted elsewhere";
  }

  @Override
  public String basis() {
    return "A part stands in one place at a time: of two records that claim it, one is wrong.";
  }

  @Override
  public Finding judge(LoopView loop) {
    if (!loop.facts().contains(Fact.PLACEMENTS)) {
      return finding(Verdict.NOT_JUDGED, "The source doesn't say where else parts stand.");
    }
    Remarks remarks = new Remarks();
    loop.disputed()
        .forEach(
            claim ->
                remarks.add(
                    Verdict.ATTENTION,
                    claim,
                    "Read the serial at both points, then correct the record that is wrong."));
    loop.everyPart().stream()
        .filter(part -> part.name().isIdentified())
        .forEach(part -> look(loop, part, remarks));
    return remarks.of(this, "No part is identified, so none can be looked for elsewhere.");
  }

  private static void look(LoopView loop, PartView part, Remarks remarks) {
    if (part.elsewhere().isEmpty()) {
      remarks.add(Verdict.MATCHES, "No part that is identified stands elsewhere.");
    } else {
      remarks.add(
          Verdict.REFUSED,
          Words.sentence(part.words() + " " + places(loop, part.elsewhere())),
          "Read the serial on the part and correct the record that is wrong.");
    }
  }

  private static String places(LoopView loop, List<Elsewhere> elsewhere) {
    if (elsewhere.stream().allMatch(place -> place.tag().equals(loop.tag()))) {
      return "stands twice in this loop";
    }
    String named =
        elsewhere.stream()
            .limit(MOST_NAMED)
            .map(Elsewhere::toString)
            .collect(Collectors.joining(", "));
    return "also stands at " + named + (elsewhere.size() > MOST_NAMED ? " and more places" : "");
  }
}
