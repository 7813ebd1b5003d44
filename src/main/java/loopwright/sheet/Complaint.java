package loopwright.sheet;

import loopwright.problem.Problem;
import loopwright.problem.Refused;

/**
 * One thing that is wrong with a file, and where.
 *
 * @param row line in the file, counted from 1; 0 when the file as a whole is meant
 * @param column its heading, or its number where there is no heading; empty when a whole row is
 *     meant
 * @param code of the {@link Problem}
 * @param message whole sentences, place included
 */
public record Complaint(String file, int row, String column, String code, String message) {
  private static final String ROW = "{0}, row {1}";
  private static final String COLUMN = ROW + ", column {2}";

  /**
   * Takes the place from the parts: a sentence that begins <code>{0}, row {1}, column {2}</code>
   * has file, row and column in that order.
   */
  public static Complaint of(Problem problem, Object... parts) {
    String sentence = problem.sentence();
    return new Complaint(
        String.valueOf(parts[0]),
        sentence.startsWith(ROW) ? Integer.parseInt(String.valueOf(parts[1])) : 0,
        sentence.startsWith(COLUMN) ? String.valueOf(parts[2]) : "",
        problem.code(),
        Refused.say(problem, parts));
  }

  @Override
  public String toString() {
    return message;
  }
}
