package loopwright.matching.rules;

import loopwright.matching.Calibration;
import loopwright.matching.Fact;
import loopwright.matching.Finding;
import loopwright.matching.LoopView;
import loopwright.matching.Rule;
import loopwright.matching.Slot;
import loopwright.matching.Verdict;

/**
 * The latest as-left calibration belongs to exactly this combination and conforms. A curve often
 * comes after assembly, so this never blocks assembly; it blocks return to service.
 */
record CalibratedAsFitted() implements Rule {

  @Override
  public String name() {
    return "calibrated as fitted";
  }

  @Override
  public String basis() {
    return "An exchange, even like for like, can move the gap voltage by tenths of a volt (seen in a"
        + " maker's installation manual), so it voids the curve.";
  }

  @Override
  public boolean blocksAssembly() {
    return false;
  }

  @Override
  public boolean attentionBlocksService() {
    return true;
  }

  @Override
  public Finding judge(LoopView loop) {
    if (!loop.facts().contains(Fact.CALIBRATION)) {
      return finding(Verdict.NOT_JUDGED, "The source holds no calibrations.");
    }
    Calibration latest = loop.calibration();
    if (latest == null) {
      return finding(
          Verdict.ATTENTION, "No as-left calibration is on record.", "Take and record a curve.");
    }
    String taken = "The latest as-left, of " + latest.asLeftOn() + ",";
    if (!latest.changedSince().isEmpty()) {
      return finding(
          Verdict.ATTENTION,
          taken + " was taken without " + Words.list(latest.changedSince()) + ".",
          "Take a new curve with the parts as fitted.");
    }
    if (!loop.slots().stream().allMatch(Slot::isKnown)) {
      return finding(Verdict.UNKNOWN, taken + " can't be held against parts that are not known.");
    }
    return outcome(latest.outcome(), taken);
  }

  private Finding outcome(Calibration.Outcome outcome, String taken) {
    return switch (outcome) {
      case CONFORMS ->
          finding(Verdict.MATCHES, taken + " was taken with exactly these parts and conforms.");
      case DOES_NOT_CONFORM ->
          finding(Verdict.ATTENTION, taken + " does not conform.", "Find the cause.");
      case NO_CURVE ->
          finding(Verdict.ATTENTION, taken + " has no curve.", "Take a curve with these parts.");
    };
  }
}
