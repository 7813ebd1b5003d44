package loopwright.pack;

import loopwright.problem.Problem;

/** Why a pack was not issued, or what came back was not taken. */
public enum PackProblem implements Problem {
  NOTHING_TO_ISSUE("B-101", "{0} has no loop to issue a pack for. Take loops in first."),
  NOTHING_CHANGED(
      "B-102", "Nothing changed since revision {0}; it stays the newest. Hand that one out again."),
  NO_SUCH_REVISION("B-103", "{0} has no revision {1}."),
  NO_LETTER(
      "B-104", "''{1}'' on the sheet of {0} holds a letter that no font here has: {2}. Change it."),
  NOT_FILLED("B-201", "{0}: no cell is filled in. Nothing comes of it."),
  NO_HEADINGS(
      "B-202",
      "{0}: the first row must hold the headings as they were handed out. Missing: {1}. Fill in the"
          + " workbook as it was handed out, or copy the cells into it."),
  EDITED_HEADING(
      "B-203",
      "{0}, row {1}, column {2}: the heading is ''{3}'' where ''{4}'' stood when it was handed out."
          + " Put it back."),
  OTHER_REGISTER(
      "B-204",
      "{0}, row {1}, column {2}: ''{3}'' names a pack of another register. Bring it back where it"
          + " was made."),
  OTHER_OUTAGE(
      "B-205",
      "{0}, row {1}, column {2}: this row belongs to {3}, not to {4}. Bring it back there."),
  NO_IDENTITY(
      "B-206",
      "{0}, row {1}, column {2}: ''{3}'' is no pack''s identity. Copy the cell anew from the sheet"
          + " that was handed out."),
  SUPERSEDED(
      "B-207",
      "{0}, row {1}, column {2}: {3} was filled in on revision {4}, and revision {5} changed its {6}."
          + " Look at the new sheet, then fill that in."),
  NOT_IN_PACK(
      "B-208",
      "{0}, row {1}, column {2}: {3} is not in the pack any more: {4}. Take it in again to bring its"
          + " results back."),
  NEVER_IN_PACK(
      "B-209",
      "{0}, row {1}, column {2}: {3} was not in revision {4}. Check the tag; it must stand as handed"
          + " out."),
  UNKNOWN_ITEM(
      "B-210",
      "{0}, row {1}, column {2}: ''{3}'' is no line of the sheet of {4}. Put back what stood there."),
  TWICE("B-211", "{0}, row {1}, column {2}: ''{3}'' of {4} stands twice. Keep one row."),
  FORMULA(
      "B-212",
      "{0}, row {1}, column {2}: a formula stands here. Put its value in (copy, paste as value)."),
  TEXT_FOR_NUMBER(
      "B-213",
      "{0}, row {1}, column {2}: ''{3}'' is text where a number belongs. Type digits only; the unit"
          + " stands beside it."),
  NOT_READABLE(
      "B-214", "{0}, row {1}, column {2}: ''{3}'' can''t be read here. Type a text or a number."),
  DATE_FOR_NUMBER(
      "B-215",
      "{0}, row {1}, column {2}: the spreadsheet made the date {3} of what was typed. Type the number"
          + " again, with the mark that this spreadsheet uses."),
  LOCAL_DATE(
      "B-216",
      "{0}, row {1}, column {2}: ''{3}'' is no day that reads the same everywhere. Write it as"
          + " 2026-03-14 09:40, on the site''s clock."),
  NOT_A_WORD("B-217", "{0}, row {1}, column {2}: ''{3}'' is none of {4}. Write one of them."),
  NO_ENTRY_HERE(
      "B-218", "{0}, row {1}, column {2}: nothing belongs here. Move ''{3}'' to its own line."),
  READING("B-219", "{0}, row {1}, column {2}: {3}"),
  NO_OUTCOME(
      "B-220",
      "{0}, row {1}, column {2}: cells of {3} are filled in, but not whether it is done. Write done,"
          + " not done or failed."),
  NO_REASON("B-221", "{0}, row {1}, column {2}: say why {3} is {4}."),
  NO_MOMENT("B-222", "{0}, row {1}, column {2}: say when {3} was measured {4}: 2026-03-14 09:40."),
  NO_NAME("B-223", "{0}, row {1}, column {2}: say who measured {3} {4}."),
  NO_AS_LEFT(
      "B-224",
      "{0}, row {1}, column {2}: {3} is done but has no as-left curve. Give its readings, or say that"
          + " nothing was touched, or why there is no curve."),
  UNKNOWN_SERIAL("B-225", "{0}, row {1}, column {2}: {3}"),
  RETURNED_BEFORE(
      "B-226",
      "{0}, row {1}, column {2}: {3} came back as done already, by {4}, with other values. Put a"
          + " misread curve right on the loop''s own page."),
  NOT_KEPT("B-227", "{0}, row {1}, column {2}: {3} can''t be kept: {4}"),
  FORGOTTEN("B-228", "This file is no longer held here. Choose it again; nothing was kept of it."),
  QUESTIONS("B-229", "Look at what is asked of {0}, and tick that it stands so."),
  NOT_ISSUED("B-230", "{0} has no pack yet, so nothing can come back. Issue one first."),
  STANDARDS_OF_NOTHING(
      "B-231",
      "{0}, row {1}, column {2}: standards are named for {3} {4}, but no reading stands there. Give the"
          + " readings, or leave this empty."),
  BYPASS_LACKS(
      "B-232",
      "{0}, row {1}, column {2}: a bypass of {3} is written down, but nothing stands for ''{4}''. Write it down whole,"
          + " or leave it empty."),
  SAID_MEANWHILE(
      "B-233", "{0} came back meanwhile, as {1}. Look at what was recorded, then choose again.");

  private final String code;
  private final String sentence;

  PackProblem(String code, String sentence) {
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
