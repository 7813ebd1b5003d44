package loopwright.gapround;

import loopwright.problem.Problem;

/** Why a row of a gap round, or the whole file, was not taken. */
public enum RoundProblem implements Problem {
  NO_FILE("Y-101", "Choose the file with the gap voltages."),
  NO_STATE(
      "Y-102",
      "{0}, row {1}, column {2}: the machine state is missing. Write rest, turning or running: a gap"
          + " at rest doesn't compare with one of a running machine."),
  NO_MOMENT("Y-103", "{0}, row {1}, column {2}: “{3}” is no moment. {4}"),
  NOT_VOLTS("Y-104", "{0}, row {1}, column {2}: {3}"),
  TWICE(
      "Y-105",
      "{0}, row {1}, column {2}: {3} has a reading for that moment in row {4} already. Leave one"
          + " out."),
  NOTHING(
      "Y-106",
      "Not one tag of {0} is in the register, so nothing was kept. Check the tags, for instance"
          + " “{1}”, or bring the points in first."),
  CHANGED("Y-107", "{0} was changed while it was being read. Nothing was kept; bring it in again.");

  private final String code;
  private final String sentence;

  RoundProblem(String code, String sentence) {
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
