package loopwright.sheet;

import loopwright.problem.Problem;

/** Why a file could not be read as a table. */
public enum SheetProblem implements Problem {
  NO_FILE("S-101", "{0}: there is no such file, or it can''t be opened. Check the path."),
  TOO_LARGE(
      "S-102", "{0}: the file holds {1} MB; at most {2} MB are read. Split it into smaller files."),
  NOT_TEXT(
      "S-103",
      "{0}: this is not a text file (byte {1} can''t stand in one). Save the sheet as CSV, UTF-8."),
  NOT_UTF8(
      "S-104",
      "{0}, line {1}: the text is not UTF-8. Save the sheet as CSV with the UTF-8 encoding."),
  EMPTY("S-105", "{0}: the file is empty. Its first line must hold the column headings."),
  UNKNOWN_HEADING(
      "S-106", "{0}, row {1}, column {2}: there is no column ''{3}''. Did you mean ''{4}''?"),
  REPEATED_HEADING(
      "S-107", "{0}, row {1}, column {2}: the heading ''{3}'' stands twice. Keep one of them."),
  MISSING_HEADING("S-108", "{0}, row {1}: the column ''{2}'' is missing. Add it to the headings."),
  TOO_MANY_CELLS(
      "S-109",
      "{0}, row {1}: the row has {2} cells, the headings are {3}. Put quotes round a cell that"
          + " holds the separator."),
  BROKEN_QUOTES(
      "S-110", "{0}, row {1}: a quoted cell is never closed. Add the missing quotation mark."),
  BLANK_HEADING(
      "S-111", "{0}, row {1}, column {2}: the heading is empty above filled cells. Name it."),
  NOT_A_NUMBER(
      "S-112",
      "{0}, row {1}, column {2}: ''{3}'' is not a number. Write digits with a decimal point or comma"
          + " and no unit; the unit stands in the heading."),
  NOT_A_CHOICE(
      "S-113", "{0}, row {1}, column {2}: ''{3}'' is not one of {4}. Did you mean ''{5}''?"),
  TEXT_TOO_LONG(
      "S-114",
      "{0}, row {1}, column {2}: the text has {3} characters; at most {4} are kept. Shorten it."),
  TWO_UNITS(
      "S-115",
      "{0}, row {1}: the columns ''{2}'' and ''{3}'' give one quantity in two units. Keep one."),
  NOTHING_GIVEN("S-116", "{0}, row {1}, column {2}: the cell is empty. It must be filled."),
  NOT_A_LIST(
      "S-117",
      "{0}, row {1}, column {2}: ''{3}'' is not a list of numbers. Put spaces or | between them, and"
          + " no unit: 0.5 1.0 1.5."),
  NOT_A_WORKBOOK(
      "S-118",
      "{0}: this is no workbook that can be read. Save it as an Excel workbook (.xlsx) without a"
          + " password, or as CSV, UTF-8."),
  TOO_MANY_ROWS("S-119", "{0}: more than {1} rows are filled. Split it into smaller files."),
  FORMULA(
      "S-120",
      "{0}, row {1}, column {2}: a formula stands here. Put its value in (copy, paste as value)."),
  NO_VALUE("S-121", "{0}, row {1}, column {2}: ''{3}'' is neither a number nor a text. Type it.");

  private final String code;
  private final String sentence;

  SheetProblem(String code, String sentence) {
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
