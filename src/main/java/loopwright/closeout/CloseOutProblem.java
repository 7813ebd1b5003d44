package loopwright.closeout;

import loopwright.problem.Problem;

/** Why an outage was not closed, or nothing carried over. */
public enum CloseOutProblem implements Problem {
  STILL_OPEN(
      "Z-101",
      "Not closed: nothing is said yet of {0}. Bring the sheets back, or say why they are not done."),
  NOT_IN_SERVICE(
      "Z-102",
      "Not closed: {0} came back as done but may not go back to service. {1} Put that right; have a"
          + " concession decided where a rule refuses what is fitted; or say with a reason that it"
          + " failed, and carry it over."),
  CARRY_WHERE("Z-103", "Choose another outage that is not closed."),
  NOTHING_TO_CARRY("Z-104", "Everything is done; there is nothing to carry over."),
  NOT_BEGUN("Z-105", "{0} is {1}. Say first that it is under way."),
  OTHER_TRAINS(
      "Z-106",
      "No train of {0} holds what is left: {1}. Add the train there, or choose another outage.");

  private final String code;
  private final String sentence;

  CloseOutProblem(String code, String sentence) {
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
