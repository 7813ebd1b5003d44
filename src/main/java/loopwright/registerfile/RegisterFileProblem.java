package loopwright.registerfile;

import loopwright.problem.Problem;

/** Why a register file or a list of families can't be used. */
public enum RegisterFileProblem implements Problem {
  IMPOSSIBLE_LENGTH(
      "M-101",
      "{0}, row {1}, column {2}: ''{3}'' can''t be the length of a lead, a cable or a system. Give one"
          + " from 0.1 to 60 m, and check the unit in the heading."),
  IMPOSSIBLE_TIP(
      "M-102",
      "{0}, row {1}, column {2}: ''{3}'' can''t be the diameter of a tip. Give one from 1 to 100 mm."),
  IMPOSSIBLE_SCALE_FACTOR(
      "M-103",
      "{0}, row {1}, column {2}: ''{3}'' can''t be a scale factor. Give a positive one from 0.01 to 50"
          + " mV/µm (0.3 to 1270 mV/mil), and check the unit in the heading."),
  REPEATED_TAG(
      "M-104",
      "{0}, row {1}, column {2}: the tag ''{3}'' stands already in {4}, row {5}. Each loop has one row:"
          + " remove one, or correct its tag."),
  NOT_A_SERIAL(
      "M-105",
      "{0}, row {1}, column {2}: ''{3}'' is not a serial. Leave the cell empty where nothing is fitted;"
          + " write ''not accessible'' where a part is fitted whose serial can''t be read."),
  SHORTENED_BY_SPREADSHEET(
      "M-106",
      "{0}, row {1}, column {2}: ''{3}'' is a number that a spreadsheet has shortened, so digits are"
          + " lost. Format the column as text and enter the serial again."),
  NO_LOOPS("M-107", "{0}: there is no row below the headings. Give one row a loop."),
  GIVEN_TWICE("M-108", "{0}: the file is given twice. Name each file once."),
  REPEATED_FAMILY(
      "M-109",
      "{0}, row {1}, column {2}: the family ''{3}'' stands already in row {4}. Remove one, or correct"
          + " its code."),
  UNKNOWN_FAMILY(
      "M-110",
      "{0}, row {1}, column {2}: there is no family ''{3}'' in this file. Did you mean ''{4}''?"),
  IMPOSSIBLE_TOLERANCE(
      "M-111",
      "{0}, row {1}, column {2}: ''{3}'' can''t be a length tolerance. Give one from 0 to 1 m."),
  PAIR_WITHOUT_VOUCHER(
      "M-112",
      "{0}, row {1}, column {2}: the cell is empty. Name who says that the families are"
          + " interchangeable.");

  private final String code;
  private final String sentence;

  RegisterFileProblem(String code, String sentence) {
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
