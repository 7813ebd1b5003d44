package loopwright.cause;

import loopwright.problem.Problem;

/** Why values can't be weighed; each is a question back, since a wrong answer would be worse. */
public enum CauseProblem implements Problem {
  MISSING("Q-101", "{0} is missing. Give {1}."),
  SENSITIVITY_MISSING(
      "Q-102",
      "{0} is missing. Gap voltage alone can't tell a moved gap from a wrong cable: give {1}, taken"
          + " at the same gap and the same place as the volts."),
  NOT_A_NUMBER("Q-103", "{0}: \"{1}\" is not a number. Give {2}."),
  POSITIVE_VOLTS(
      "Q-104",
      "{0}: {1} V is positive. The output of these drivers is negative, closer being less negative."
          + " Type -{1} if that is meant; otherwise check the meter's leads."),
  BEYOND_SUPPLY("Q-105", "{0}: {1} V is more than a supply of -24 V can give. {2}"),
  NO_BASELINE_OUTPUT(
      "Q-106",
      "{0}: {1} V is no output of a healthy loop. Give the volts at the baseline gap, usually -8 to"
          + " -10 V."),
  NO_SENSITIVITY(
      "Q-107",
      "{0}: {1} is not above zero. If the output didn't move at all, the probe circuit is open or"
          + " shorted: measure its resistance. Otherwise give {2}."),
  LARGE_SENSITIVITY("Q-108", "{0}: {1} {2} is more than any probe gives. {3}"),
  SENSITIVITY_UNITS(
      "Q-109",
      "{0}: {1} {2} is about {3} of the baseline's {4}, as when mV/µm and mV/mil are mixed up. Give"
          + " the sensitivity in the unit that the name says, or use the other one."),
  IMPOSSIBLE_GAP("Q-110", "{0}: {1} {2} is no gap of a probe. Give the gap in {2}, above zero."),
  NO_LINE(
      "Q-111",
      "The baseline doesn't fit together: with {0} and {1} at {2} the output would be 0 V at a gap of"
          + " {3}. Check the units of gap (µm or mil) and sensitivity (mV/µm or mV/mil)."),
  NOT_POSITIVE("Q-112", "{0}: {1} is not above zero. Give {2}."),
  LARGE_UNCERTAINTY("Q-113", "{0}: {1} is larger than any such uncertainty. Give {2}."),
  IMPOSSIBLE_LENGTH(
      "Q-114", "{0}: {1} m is no total length of probe lead and cable. Give metres, {2} to {3}."),
  LENGTH_BEYOND(
      "Q-115",
      "{0}: {1} m is more than a quarter away from the system length of {2}, beyond the model. Leave"
          + " it out, or check the system length: {3} to {4} can be told apart."),
  REPEATED_LENGTH("Q-116", "{0}: {1} m stands twice. Give each length once."),
  UNKNOWN_PLACE("Q-117", "{0}: \"{1}\" is no place to measure at. Say {2}."),
  BOTH_UNITS("Q-118", "{0} and {1} say the same thing. Give one of them."),
  NOT_FALLING(
      "Q-119",
      "{0}: the output doesn't fall with every step of the gap (at {1}), so it is no curve of a"
          + " healthy loop. Give the last good as-left curve."),
  OFF_CURVE(
      "Q-120",
      "{0}: the curve of the baseline reaches from {1} to {2}; {3} lies outside. Give a gap within it."),
  POSITIVE_CURVE(
      "Q-121",
      "{0}: the output at {1} is not negative. Give the readings as the driver gives them."),
  TWO_PLACES(
      "Q-122",
      "Volts and sensitivity must belong together: take both at the same gap, at the same place and"
          + " with the same meter, then say so."),
  ASKED_BACK("Q-123", "{0}"),
  SUSPECTED_BEFORE(
      "Q-124", "Of {0} that is suspected already: {1}. Settle the older suspicion first."),
  NOT_SUSPECTED("Q-125", "That suspicion is settled already. Look at the list again."),
  IMPOSSIBLE_WEIGHT(
      "Q-126",
      "{0}: {1} is no weight. Give zero to {2} with at most {3} decimals; only ratios count."),
  NO_WEIGHT(
      "Q-127",
      "No cause would have a weight. Give at least one besides the monitor's scale factor a weight"
          + " above zero."),
  SAME_WEIGHTS("Q-128", "These weights are in use already. Nothing was stored."),
  OTHER_WEIGHTS(
      "Q-129",
      "Somebody set other weights since this page was opened. Compare with the versions below, then"
          + " send it again."),
  RULED_OUT(
      "Q-130",
      "Every cause that could explain {0} and {1} has a weight of zero. Give the causes a weight"
          + " before measuring, or check the numbers."),
  TWO_GAPS(
      "Q-131",
      "{0}: the sensitivity was taken at {1}, the volts at {2}; more than 2 % of the travel lies"
          + " between. Volts and sensitivity from different gaps don't belong together: take the"
          + " sensitivity again at the gap of the volts.");

  private final String code;
  private final String sentence;

  CauseProblem(String code, String sentence) {
    this.code = code;
    this.sentence = sentence;
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
