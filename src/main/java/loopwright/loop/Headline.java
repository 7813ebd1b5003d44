package loopwright.loop;

import loopwright.matching.Finding;
import loopwright.matching.Judgement;
import loopwright.matching.Verdict;

/** The one sentence beside a loop's verdict. */
final class Headline {
  private Headline() {}

  static String of(Judgement judgement) {
    Finding worst = judgement.findings().get(0);
    return judgement.verdict().isWorseThan(Verdict.MATCHES)
        ? worst.message()
        : "All that was judged matches.";
  }
}
