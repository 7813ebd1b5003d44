package loopwright.curve;

import loopwright.problem.Refused;
import org.jspecify.annotations.Nullable;

/**
 * Something wrong or doubtful at a place among the readings.
 *
 * @param problem which
 * @param row as counted in the input, from 1; 0 for the curve as a whole
 * @param column null for the row as a whole
 * @param sentence what is wrong and what would be right
 */
public record Remark(CurveProblem problem, int row, @Nullable Column column, String sentence) {

  /** The columns of readings. */
  public enum Column {
    GAP,
    VOLTS,
    /** Of the down run, where both runs stand in one row. */
    DOWN_VOLTS,
    RUN
  }

  static Remark at(int row, @Nullable Column column, CurveProblem problem, Object... parts) {
    return new Remark(problem, row, column, Refused.say(problem, parts));
  }

  static Remark whole(CurveProblem problem, Object... parts) {
    return at(0, null, problem, parts);
  }

  /** The sentence, with its row before it unless it is about the curve as a whole. */
  public String sentenceWithRow() {
    return row == 0 ? sentence : "Row " + row + ": " + sentence;
  }
}
