package loopwright.fieldcheck;

import loopwright.problem.Problem;

/** Why a reading or a check was not kept. */
public enum FieldCheckProblem implements Problem {
  POSITIVE_VOLTS(
      "F-101",
      "{0} is positive, and a driver gives negative volts. If the meter's leads were the other way"
          + " round, type it with a minus."),
  BEYOND_SUPPLY(
      "F-102",
      "{0} is more than any supply of these loops gives; the limit is −30 V. Look at the unit and"
          + " the decimal mark."),
  IN_FUTURE("F-103", "{0} is in the future. Give the moment at which it was read."),
  ALREADY_KEPT("F-104", "That very record is kept already.");

  private final String code;
  private final String sentence;

  FieldCheckProblem(String code, String sentence) {
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
