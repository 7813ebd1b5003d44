package loopwright.reach;

import loopwright.problem.Problem;

/** Why the reach of a standard's error can't be worked out. */
public enum ReachProblem implements Problem {
  NO_ERROR(
      "Y-101",
      "Give at least one range with its error: an amount, a share of the reading, or both."),
  RANGE_REVERSED(
      "Y-102", "Range {0}: it begins at {1} and ends at {2}. Give the smaller end first."),
  ONE_END("Y-103", "Range {0}: give both ends, or none for the whole range of the standard."),
  LARGE("Y-104", "Range {0}: an error of {1} % can't be. Give less than 50 % either way."),
  RANGES_OVERLAP("Y-105", "Ranges {0} and {1} overlap. Each reading has one error."),
  DATES("Y-106", "It would end on {0}, before it begins on {1}. Give a later end."),
  NO_QUANTITY(
      "Y-107", "{0} sets no gap and measures no output, so no result follows from its error.");

  private final String code;
  private final String sentence;

  ReachProblem(String code, String sentence) {
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
