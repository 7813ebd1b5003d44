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
    if (!latest.reservations().isEmpty()) {
      return finding(
          Verdict.ATTENTION,
          "%s was taken with exactly these parts, but %s."
              .formatted(taken, String.join("; ", latest.reservations())),
          "Settle that, or take a curve here.");
    }
    return outcome(latest, taken);
  }

  private Finding outcome(Calibration latest, String taken) {
    return switch (latest.outcome()) {
      case CONFORMS ->
          finding(
              Verdict.MATCHES,
              "%s was taken with exactly these parts%s and conforms."
                  .formatted(taken, latest.elsewhere() ? ", before they were fitted here," : ""));
      case DOES_NOT_CONFORM ->
          finding(Verdict.ATTENTION, taken + " does not conform.", "Find the cause.");
      case NO_CURVE ->
          finding(Verdict.ATTENTION, taken + " has no curve.", "Take a curve with these parts.");
    };
  }
}
