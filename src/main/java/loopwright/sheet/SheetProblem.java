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
      "S-111", "{0}, row {1}, column {2}: the heading is empty above filled cells. Name it.");

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
