package loopwright.lengthlaw;

import loopwright.problem.Problem;

/** Why evidence of a length law was not taken or withdrawn. */
public enum LawProblem implements Problem {
  IN_BALANCE(
      "Z-101",
      "{0} is what the driver is tuned for. Only a wrong length teaches how a wrong length shows."),
  NOT_CONFIRMED(
      "Z-102",
      "Only a confirmed cause teaches: tick this when the parts were looked at and the length is"
          + " proved."),
  WITHDRAWN("Z-103", "That evidence was withdrawn already."),
  NO_SUCH("Z-104", "There is no such evidence in this family."),
  BEYOND(
      "Z-105", "{0} is more than a quarter of {1} off, beyond what the law was thought out for.");

  private final String code;
  private final String sentence;

  LawProblem(String code, String sentence) {
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
