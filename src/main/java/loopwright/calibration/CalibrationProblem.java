package loopwright.calibration;

import loopwright.problem.Problem;

/** Why a calibration was not kept. */
public enum CalibrationProblem implements Problem {
  NO_COMBINATION(
      "K-101",
      "Nobody can say which parts were fitted at {0} then: probe, driver or a slot between them is"
          + " not known. Record a survey first, then the curve."),
  IN_FUTURE("K-102", "{0} is in the future. Give the moment at which the curve was taken."),
  NO_CURVE_REASON("K-103", "Say why there is no curve, for instance: output dead at every gap."),
  NOT_FOUND("K-104", "There is no calibration {0}."),
  CURVE_UNUSABLE("K-105", "The curve can''t be kept: {0}"),
  ASK_AGAIN("K-106", "Look at this once more and confirm it: {0}"),
  ALREADY_KEPT("K-107", "This very calibration is already kept as {0}; nothing was stored."),
  OTHER_OF_THAT_MOMENT(
      "K-108",
      "{0} of that loop, stage and moment is already kept and differs from this. Give another"
          + " time, or confirm that both shall stand; the one entered later then counts."),
  OUT_OF_ORDER(
      "K-115",
      "{0} is the {1} of {2}, and this {3} would be out of order with it: as left comes after as"
          + " found. Give the right time, or confirm it."),
  NO_PROFILE("K-109", "Name the profile that judges the curve, profile=…, one of {0}."),
  TWO_STANDARDS("K-110", "Two of one sort, {0}: {1}. Choose the one it was made with."),
  SUPERSEDED_BY_ITSELF("K-111", "A record can't stand in its own place. Give the other one."),
  SUPERSEDED_ALREADY("K-112", "{0} is superseded already, by {1}."),
  SUPERSEDED_ELSEWHERE(
      "K-113", "{0} is of another loop or stage than {1}, so it can't stand in its place."),
  NOT_STOOD_IN(
      "K-116",
      "These are exactly the parts fitted at {0} then. Type the curve as the loop''s own, without a"
          + " part standing in."),
  NO_SET(
      "K-117",
      "That names no set of parts: scan or choose a probe, what lies between, and a driver."),
  NO_SUCH_PART("K-118", "There is no part {0} in the register. Register it first."),
  WRONG_PLACE("K-119", "{0} is a {1}; it can''t stand in the place of the {2}."),
  ELSEWHERE(
      "K-120",
      "On record {0} was fitted at {1} then. Record a survey if it was taken out, or confirm that it"
          + " was measured here nevertheless."),
  TARGET_NEEDED(
      "K-121", "Name the alloy of the target: on a bench nobody can tell it from the shaft."),
  SEVERAL_PARTS("K-122", "{0} parts are called {1}: {2}. Scan the label of the one you mean."),
  SUPERSEDED_RING("K-114", "{0} is itself superseded by {1}. Give the one that counts.");

  private final String code;
  private final String sentence;

  CalibrationProblem(String code, String sentence) {
    this.code = code;
    this.sentence = sentence.replace("''", "'");
  }

  @Override
  public String code() {
    return code;
  }

  @Override
  public String sentence() {
    return sentence;
  }
}
