package loopwright.curve;

import loopwright.problem.Problem;

/**
 * What can be wrong with readings. Codes C-1xx: nothing can be computed until it is corrected.
 * Codes C-2xx: it was computed, and is asked back before it is kept.
 */
public enum CurveProblem implements Problem {
  NOT_A_NUMBER("C-101", "'{0}' is not a number. Write digits with at most one decimal mark."),
  EMPTY_CELL("C-102", "the cell is empty. Give the {0}, or take the row out."),
  NEGATIVE_GAP("C-103", "a gap of {0} is negative. Give the distance from tip to target as it is."),
  GAP_TOO_LARGE("C-104", "a gap of {0} is beyond every probe's range, 60 mm.{1}"),
  UNKNOWN_RUN("C-105", "'{0}' is not a run. Write up or down."),
  REPEATED_GAP(
      "C-106",
      "the gap {0} stands twice in the {1} run, first in row {2}. Keep one of them, or mark the"
          + " second run as down."),
  MIXED_SIGNS(
      "C-107",
      "{0} is {1} while the others are {2}. A driver's output is negative: write all with their"
          + " sign, or all without."),
  IMPOSSIBLE_VOLTAGE(
      "C-108", "{0} is more than a loop can give. Outputs lie between 0 and −30 V.{1}"),
  TOO_FEW_READINGS(
      "C-109", "the {0} run has {1}. A curve needs at least 3 readings at different gaps."),
  GAP_UNIT_SLIP(
      "C-110",
      "gaps of {0} can't be judged by profile {1} ({2}). They fit it as {3}: say {3}, not"
          + " {4}."),
  OUTSIDE_RANGE(
      "C-111",
      "fewer than 3 readings of a run lie inside the range of profile {0} ({1}). Choose the"
          + " profile of this loop, or read inside its range."),
  TOO_MANY_READINGS("C-112", "there are {0} readings. A curve has at most {1}."),
  TOO_MANY_CELLS(
      "C-113",
      "the row has {0} cells. Give gap and voltage, and if need be the run or the voltage of the"
          + " down run; with decimal commas, separate cells by tab, semicolon or blank."),
  NO_READINGS("C-114", "there are no readings. Give a gap and a voltage in each row."),
  TWO_COLUMNS(
      "C-115", "{0}, row {1}: the columns {2} and {3} say the same thing. Keep one of them."),
  NO_COLUMN("C-116", "{0}, row {1}: a column is missing. Give either {2} or {3}."),
  HEADING_UNIT(
      "C-117", "the heading says {0}, but {1} was chosen. Choose {0}, or take the heading out."),
  COMMAS(
      "C-118",
      "three numbers separated by commas: are some of them decimal commas? Separate the cells by"
          + " tab, semicolon or blank."),
  TOO_LONG("C-119", "the cell has {0} characters; at most {1} are kept. Leave out digits."),
  MAGNITUDES(
      "C-201",
      "All voltages are positive and were read as magnitudes: a driver's output is negative."),
  BEYOND_SUPPLY(
      "C-202",
      "{0} is lower than a loop on a −24 V supply gives (about −23.5 V). Check the reading, or the"
          + " supply."),
  VOLTS_UNIT_SLIP(
      "C-203", "No voltage exceeds {0} in size. If the readings are in volts, say V, not mV.");

  private final String code;
  private final String sentence;

  CurveProblem(String code, String sentence) {
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

  /** Nothing can be computed until it is corrected; otherwise it is asked back. */
  public boolean stops() {
    return code.startsWith("C-1");
  }
}
