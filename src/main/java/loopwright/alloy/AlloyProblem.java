package loopwright.alloy;

import loopwright.problem.Problem;

/** Why a group of alloys was not recorded. */
public enum AlloyProblem implements Problem {
  GROUP_TAKEN("E-101", "There is a group {0} already. Choose another name, or change that one."),
  ALLOY_TAKEN(
      "E-102",
      "Alloy {0} is in group {1} already. An alloy belongs to one group: take it out there first."),
  NO_ALLOY("E-103", "Name at least one alloy, each on a line of its own."),
  ALLOY_TWICE("E-104", "Alloy {0} stands twice in the list."),
  BAD_SLOPE("E-105", "“{0}” is no relative slope. Give more than 0 and at most 10, such as 1.25."),
  NO_NAME("E-106", "“{0}” has neither letter nor digit. Give a name.");

  private final String code;
  private final String sentence;

  AlloyProblem(String code, String sentence) {
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
