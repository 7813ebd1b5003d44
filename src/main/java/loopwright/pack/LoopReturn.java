package loopwright.pack;

import java.util.ArrayList;
import java.util.List;
import loopwright.calibration.Stage;
import loopwright.outage.Work;
import org.jspecify.annotations.Nullable;

/**
 * One loop of a file that came back, fully read.
 *
 * @param loop the sheet that it was filled in on
 * @param outcome done, not done or failed
 * @param nothingTouched the as-found stands as the as-left
 * @param bypass that stood for the work; null where none is written down
 */
record LoopReturn(
    Revision.Loop loop,
    String fileName,
    String hash,
    String outcome,
    String reason,
    boolean nothingTouched,
    StageFilled found,
    StageFilled left,
    @Nullable BypassFilled bypass) {

  String tag() {
    return loop.sheet().tag();
  }

  List<String> questions() {
    List<String> all = new ArrayList<>(found.questions());
    all.addAll(left.questions());
    return all;
  }

  /** Reads what was filled in; everything wrong is complained of at its cell. */
  static LoopReturn read(
      FilledLoop filled, Revision.Loop loop, String fileName, long outage, StageFilled.With with) {
    String outcome = filled.text(Item.OUTCOME, "", Column.AS_LEFT);
    String reason = filled.text(Item.REASON, "", Column.AS_LEFT);
    boolean untouched = filled.text(Item.NOTHING_TOUCHED, "", Column.AS_LEFT).equals("yes");
    LoopReturn read =
        new LoopReturn(
            loop,
            fileName,
            filled.hash(),
            outcome,
            reason,
            untouched,
            StageFilled.read(filled, Column.AS_FOUND, Column.AS_FOUND_DOWN, with),
            StageFilled.read(filled, Column.AS_LEFT, Column.AS_LEFT_DOWN, with),
            BypassFilled.read(filled, loop.point(), outage, with.zone(), with.now()).orElse(null));
    read.complainOfMissing(filled);
    return read;
  }

  private void complainOfMissing(FilledLoop filled) {
    FilledLoop.Place place = filled.place(Item.OUTCOME, "", Column.AS_LEFT);
    if (outcome.isEmpty()) {
      filled.complain(place, PackProblem.NO_OUTCOME, tag());
    } else if (!outcome.equals(Returned.DONE)) {
      if (reason.isEmpty()) {
        filled.complain(
            filled.place(Item.REASON, "", Column.AS_LEFT), PackProblem.NO_REASON, tag(), outcome);
      }
    } else if (wantsAsLeft() && !left.hasResult() && !(untouched() && found.hasResult())) {
      filled.complain(place, PackProblem.NO_AS_LEFT, tag());
    }
  }

  private boolean untouched() {
    return nothingTouched && !left.hasResult();
  }

  private boolean wantsAsLeft() {
    return loop.sheet().jobs().stream().anyMatch(job -> job.work().equals(Work.AS_LEFT.label()));
  }

  /** As which stage the as-found is kept. */
  Stage foundStage() {
    return untouched() ? Stage.NOTHING_TOUCHED : Stage.AS_FOUND;
  }
}
