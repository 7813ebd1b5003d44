package loopwright.loop;

import loopwright.problem.Problem;

/** Why a change of configuration was not recorded. */
public enum LoopProblem implements Problem {
  IN_FUTURE("L-101", "{0} is in the future. Give the moment at which it was found or left."),
  PART_TWICE(
      "L-102", "The part chosen for {0} stands in this chain twice. Choose another one there."),
  WRONG_KIND("L-103", "{0} is a {1}; it can''t sit in the slot {2}. Check the serial."),
  DOES_NOT_MATCH(
      "L-104",
      "This would not match, so it was not recorded as left: {0} If it is what was found fitted,"
          + " record a survey."),
  OVERLAP(
      "L-105",
      "{0} is already recorded at {1}. A part stands in one place at a time: look at its story and"
          + " correct that record first, or another time here."),
  NO_POINT("L-106", "There is no point {0}. Check the tag."),
  CHANGED_MEANWHILE(
      "L-108",
      "{0} after you opened this form. What is on record now stands beside your entries; look again,"
          + " then record."),
  SAID_ALREADY("L-109", "The record of {0} says that of {1} already. Nothing was changed."),
  NOT_USABLE("L-107", "{0} is {1}: {2}. It can''t be left fitted.");

  private final String code;
  private final String sentence;

  LoopProblem(String code, String sentence) {
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
