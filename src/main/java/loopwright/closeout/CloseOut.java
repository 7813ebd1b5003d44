package loopwright.closeout;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.outage.Outage;
import loopwright.outage.Work;
import loopwright.pack.Returned;
import loopwright.web.PathSegment;

/**
 * What an outage came to.
 *
 * @param loops in the order of their tags
 * @param bypasses entered for it, in words, open ones first
 */
record CloseOut(Outage outage, List<LoopLine> loops, List<BypassLine> bypasses) {
  CloseOut {
    loops = List.copyOf(loops);
    bypasses = List.copyOf(bypasses);
  }

  /**
   * One loop.
   *
   * @param outcome done, not done, failed or {@link #NOTHING_SAID}
   * @param told what the record made of what came back
   * @param exposed records out of tolerance, with what they did to protection until then
   * @param spares put aside for it, and whether they were used
   * @param verdict as the loop is judged now; once closed, as it was judged then
   * @param against why it may not go back to service; empty when it may
   * @param changes surveys and assemblies since the pack was issued
   * @param concessions that stand for it
   * @param works what was to be done
   * @param emergent work that was found to be needed while the outage was under way
   * @param temporary parts that are still fitted for a time only
   * @param choice names the loop with the last word on it; empty while nothing is said
   */
  record LoopLine(
      long point,
      String tag,
      String outcome,
      String reason,
      String told,
      List<String> calibrations,
      List<Exposed> exposed,
      List<String> spares,
      String verdict,
      List<String> against,
      List<String> changes,
      List<String> concessions,
      Set<Work> works,
      List<String> emergent,
      List<String> temporary,
      String choice) {

    static final String NOTHING_SAID = "nothing said";

    boolean isDone() {
      return outcome.equals(Returned.DONE);
    }

    boolean isOpen() {
      return outcome.equals(NOTHING_SAID);
    }

    /** Whether it came back as done but may not go back to service. */
    boolean isBlocked() {
      return isDone() && !against.isEmpty();
    }

    /** For templates. */
    public String href() {
      return "/loops/" + PathSegment.of(tag);
    }
  }

  /**
   * An as-found out of tolerance.
   *
   * @param record number of the calibration
   * @param sentences since when it may have been so, and where set points acted meanwhile
   */
  record Exposed(String record, List<String> sentences) {
    Exposed {
      sentences = List.copyOf(sentences);
    }
  }

  /** A bypass of this outage. */
  record BypassLine(String number, String href, String words, boolean open) {}

  List<LoopLine> with(String outcome) {
    return loops.stream().filter(loop -> loop.outcome().equals(outcome)).toList();
  }

  /** Loops that a later outage may take over. */
  List<LoopLine> toCarry() {
    return loops.stream().filter(loop -> !loop.isDone()).toList();
  }

  /** In one line. */
  String summary() {
    return Stream.of(Returned.DONE, Returned.NOT_DONE, Returned.FAILED, LoopLine.NOTHING_SAID)
        .filter(outcome -> !with(outcome).isEmpty())
        .map(outcome -> with(outcome).size() + " " + outcome)
        .collect(Collectors.joining(", "));
  }
}
