package loopwright.sheet;

import java.util.List;

/**
 * A table as it stood in a file: trimmed lower-case headings and the filled rows below them.
 *
 * @param name the file's name, for messages
 * @param separator the separator found in the heading line
 * @param headingLine the line of the headings, counted from 1
 * @param headings in order
 * @param rows blank rows left out; each as long as the headings
 */
public record Table(
    String name, char separator, int headingLine, List<String> headings, List<Row> rows) {

  /**
   * One row.
   *
   * @param line where it begins in the file, counted from 1
   * @param cells stripped of surrounding blanks, one for each heading
   */
  public record Row(int line, List<String> cells) {}

  public boolean has(String heading) {
    return headings.contains(heading);
  }

  /** The cell under that heading; empty when the table has no such column. */
  public String cell(Row row, String heading) {
    int at = headings.indexOf(heading);
    return at < 0 ? "" : row.cells().get(at);
  }
}
