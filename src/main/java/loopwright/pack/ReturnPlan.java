package loopwright.pack;

import java.util.List;
import loopwright.sheet.Complaint;
import org.jspecify.annotations.Nullable;

/**
 * What would become of a file that came back; nothing is written.
 *
 * @param held by which the file is found again
 * @param file as it was read
 * @param problems of the file as a whole
 * @param loops in the order of the file
 */
record ReturnPlan(
    String held, String fileName, FilledFile file, List<Complaint> problems, List<LoopPlan> loops) {
  ReturnPlan {
    problems = List.copyOf(problems);
    loops = List.copyOf(loops);
  }

  /** What would become of one loop. */
  enum Fate {
    KEEP("would be kept"),
    ASK("asks something first"),
    BLANK("not filled in"),
    BEFORE("kept before, nothing changes"),
    REFUSED("refused");

    private final String word;

    Fate(String word) {
      this.word = word;
    }

    String word() {
      return word;
    }
  }

  /**
   * One loop.
   *
   * @param told what would become of it, in sentences
   * @param questions to be confirmed first
   * @param read null unless it can be kept
   */
  record LoopPlan(
      String tag,
      Fate fate,
      List<Complaint> problems,
      List<String> told,
      List<String> questions,
      @Nullable LoopReturn read) {
    LoopPlan {
      problems = List.copyOf(problems);
      told = List.copyOf(told);
      questions = List.copyOf(questions);
    }
  }

  long count(Fate fate) {
    return loops.stream().filter(loop -> loop.fate() == fate).count();
  }

  boolean canKeep() {
    return count(Fate.KEEP) + count(Fate.ASK) > 0;
  }
}
