package loopwright.family;

import loopwright.problem.Problem;

/** Why a family was not changed. */
public enum FamilyProblem implements Problem {
  NOT_A_NUMBER("H-101", "“{0}” is not a number. Give {1}, such as {2}."),
  NOT_A_LENGTH(
      "H-102", "“{0}” is not a length. Write one on a line, with its unit: 4.5 m, or 15 ft."),
  NO_GROUP(
      "H-103",
      "Alloy {0} is in no alloy group. Check the spelling, or add it to its group first.{1}"),
  NOTHING_NEW("H-104", "The family says exactly that already."),
  NO_PAIR("H-105", "{0} and {1} are not entered as interchangeable. Somebody took the pair out.");

  private final String code;
  private final String sentence;

  FamilyProblem(String code, String sentence) {
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
