package loopwright.matching.rules;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.matching.Finding;
import loopwright.matching.Rule;
import loopwright.matching.Verdict;

/** What a rule that looks at several parts has to say of each; the worst becomes the finding. */
final class Remarks {
  private final List<Remark> remarks = new ArrayList<>();

  private record Remark(Verdict verdict, String message, String remedy) {}

  void add(Verdict verdict, String message) {
    add(verdict, message, "");
  }

  void add(Verdict verdict, String message, String remedy) {
    remarks.add(new Remark(verdict, message, remedy));
  }

  /**
   * The finding: the remarks of the worst verdict, those of lesser ones left to be told once the
   * worst is put right.
   *
   * @param nothingToSay why nothing was judged, for when there is no remark at all
   */
  Finding of(Rule rule, String nothingToSay) {
    if (remarks.isEmpty()) {
      return rule.finding(Verdict.NOT_JUDGED, nothingToSay);
    }
    Verdict worst = Verdict.worst(remarks.stream().map(Remark::verdict).toList());
    Set<String> messages = new LinkedHashSet<>();
    Set<String> remedies = new LinkedHashSet<>();
    for (Remark remark : remarks) {
      if (remark.verdict == worst) {
        messages.add(remark.message);
        remedies.add(remark.remedy);
      }
    }
    return rule.finding(worst, sentences(messages), sentences(remedies));
  }

  private static String sentences(Set<String> all) {
    return all.stream().filter(s -> !s.isEmpty()).collect(Collectors.joining(" "));
  }
}
