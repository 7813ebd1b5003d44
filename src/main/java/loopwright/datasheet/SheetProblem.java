package loopwright.datasheet;

import loopwright.problem.Problem;

/** Why a data sheet was not recorded. */
public enum SheetProblem implements Problem {
  NOT_A_NUMBER("B-101", "“{0}” is not a number. Give {1}, such as {2}."),
  OUT_OF_RANGE("B-102", "{0} can't be {1}. Give {2}."),
  CROSSED("B-103", "{0}: {1} is not below {2}."),
  NO_CONNECTOR(
      "B-104",
      "“{0}” is no connector. Write its type, then male or female: miniature coaxial male."),
  HALF_APPROVAL(
      "B-105",
      "An approval has a protection level, a gas group and a temperature class. Give all three, or"
          + " none."),
  NOTHING_NEW("B-106", "The data sheet says exactly that already."),
  NO_SUBJECT("B-107", "Say whose data sheet it is: a family, or maker and model.");

  private final String code;
  private final String sentence;

  SheetProblem(String code, String sentence) {
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
