package loopwright.importing;

import loopwright.problem.Problem;

/** Why a row, a file or a run was refused. */
public enum ImportProblem implements Problem {
  UNKNOWN_KIND(
      "I-101",
      "{0}, row {1}: these headings don''t say what the file holds. Known are families, components,"
          + " points, placements and calibrations; their headings are described with the import."),
  EMPTY_CELL("I-102", "{0}, row {1}, column {2}: the cell is empty. Give {3}."),
  NOT_A_NUMBER(
      "I-103",
      "{0}, row {1}, column {2}: ''{3}'' is not a number. Write digits with at most one decimal"
          + " mark and nothing else; the unit stands in the heading."),
  BOTH_MARKS(
      "I-104",
      "{0}, row {1}, column {2}: ''{3}'' holds a point and a comma. Write it without a separator of"
          + " thousands."),
  OPEN_NUMBER(
      "I-105",
      "{0}, row {1}, column {2}: ''{3}'' can be read in two ways, and nothing in the file says"
          + " which. Say whether the file has a decimal point or a decimal comma."),
  OTHER_MARK(
      "I-106",
      "{0}, row {1}, column {2}: ''{3}'' has a decimal {4}, while this file has a decimal {5}. Write"
          + " one of them throughout, and no separator of thousands."),
  UNKNOWN_WORD(
      "I-107", "{0}, row {1}, column {2}: ''{3}'' is not known here. Did you mean ''{4}''? {5}"),
  BAD_DATE(
      "I-108",
      "{0}, row {1}, column {2}: ''{3}'' is not a date beyond doubt. Write it like 2026-03-14, or"
          + " 2026-03-14T09:40 with the time."),
  NO_SUCH_TIME("I-109", "{0}, row {1}, column {2}: ''{3}'' can''t be placed. {4}"),
  IN_FUTURE(
      "I-110",
      "{0}, row {1}, column {2}: {3} is in the future. Only what has happened can be recorded."),
  FORMULA(
      "I-111",
      "{0}, row {1}, column {2}: ''{3}'' is a formula. Save the sheet with its values, not its"
          + " formulas."),
  SHEET_ERROR(
      "I-112",
      "{0}, row {1}, column {2}: the spreadsheet could not work out this cell (''{3}''). Mend it"
          + " there first."),
  SHORTENED(
      "I-113",
      "{0}, row {1}, column {2}: ''{3}'' looks like a long number that the spreadsheet shortened."
          + " Format the column as text and type it anew."),
  TWO_UNITS("I-114", "{0}, row {1}: both {2} and {3} are filled. Keep one of them."),
  OUT_OF_RANGE("I-115", "{0}, row {1}, column {2}: {3} is not possible. {4}"),
  NOT_THERE("I-116", "{0}, row {1}, column {2}: there is no {3} ''{4}''. {5}"),
  TWICE("I-117", "{0}, row {1}, column {2}: {3} stands already in {4}. Keep one of the two rows."),
  DISAGREES(
      "I-118",
      "{0}, row {1}, column {2}: ''{3}'' contradicts ''{4}'' in {5}. Write the same in both."),
  FIXED(
      "I-119",
      "{0}, row {1}, column {2}: ''{3}'' contradicts the register, which has ''{4}''. A file can''t"
          + " change this: {5}"),
  ENDS_FIRST(
      "I-120",
      "{0}, row {1}, column {2}: it ends at {3}, not after it begins at {4}. Check both dates."),
  SLOT_TAKEN(
      "I-121",
      "{0}, row {1}, column {2}: {3} {4} holds something else in that time: {5}. Check the dates of"
          + " both."),
  PART_TAKEN(
      "I-122",
      "{0}, row {1}, column {2}: {3} is somewhere else in that time: {4}. Check the dates of both,"
          + " or the serial."),
  WRONG_SLOT("I-123", "{0}, row {1}, column {2}: a {3} can''t sit in the slot {4}."),
  REFUSED_VALUE("I-124", "{0}, row {1}, column {2}: {3}"),
  REFUSED_ROW("I-125", "{0}, row {1}: {2}"),
  NO_COMBINATION(
      "I-126",
      "{0}, row {1}, column {2}: nobody can say which parts were fitted at {3} at that moment."
          + " Import its placements first, or together with this file."),
  OTHER_CALIBRATION(
      "I-127",
      "{0}, row {1}: for {2} a different curve, {3}, is recorded for the same moment. A record of a"
          + " calibration is never changed by a file; check the moment, or leave these rows out."),
  CURVE_AND_NONE(
      "I-128",
      "{0}, row {1}, column {2}: there are readings and a reason why there is no curve. Keep one."),
  LEFT_UNREAD(
      "I-129",
      "{0}, row {1}: the row was not read further, because {2}, which it needs, is refused."),
  AMBIGUOUS_PART(
      "I-130",
      "{0}, row {1}, column {2}: several components are called ''{3}''. Give maker and model too."),
  NO_VERSION("I-131", "{0}, row {1}, column {2}: the profile {3} has no version {4}. It has: {5}."),
  STANDARD("I-132", "{0}, row {1}, column {2}: {3} Put it right, or leave the cell empty."),

  HAS_PROBLEMS(
      "I-201",
      "{0} problems stand against this plan, so nothing was written. Mend them and choose the files"
          + " again."),
  MOVED_ON(
      "I-202",
      "The register has changed since this plan was made. Look at a new plan of the same files."),
  NO_PLAN(
      "I-203",
      "This plan is no longer kept: plans are forgotten after {0} minutes. Choose the files again."),
  NO_FILES("I-204", "No file was chosen. Choose at least one CSV file."),
  NOTHING_TO_DO("I-205", "Everything in these files is in the register already."),
  NO_REASON("I-206", "Say in a few words why these files are imported."),
  NEEDS_ENGINEER(
      "I-207",
      "These files add or change families, which engineers decide on. Let an engineer write them, or"
          + " leave the families out.");

  private final String code;
  private final String sentence;

  ImportProblem(String code, String sentence) {
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
