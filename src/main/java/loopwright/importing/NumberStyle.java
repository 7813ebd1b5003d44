package loopwright.importing;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.Optional;
import java.util.regex.Pattern;
import loopwright.problem.Problem;
import loopwright.sheet.Table;
import loopwright.units.Numbers;

/**
 * How one file writes its numbers. The decimal mark is the same in a whole file, so that 1,250 is
 * never guessed cell by cell: it is what the person chose, else what the file shows beyond doubt
 * (4,5 or 0.25 can't be thousands), else what goes with its separator. What remains open is a
 * problem, not a guess.
 */
final class NumberStyle {
  private static final Pattern MAYBE_THOUSANDS = Pattern.compile("[+-]?[1-9]\\d{0,2}[.,]\\d{3}");
  private static final Pattern ONE_MARK = Pattern.compile("[+-]?\\d*[.,]\\d*([eE][+-]?\\d+)?");

  private final Optional<DecimalMark> mark;

  private NumberStyle(Optional<DecimalMark> mark) {
    this.mark = mark;
  }

  /**
   * @param numeric headings of columns that hold numbers
   * @param chosen what the person said, if anything
   */
  static NumberStyle of(Table table, Collection<String> numeric, Optional<DecimalMark> chosen) {
    if (chosen.isPresent()) {
      return new NumberStyle(chosen);
    }
    Evidence evidence = new Evidence();
    for (String heading : numeric) {
      if (table.has(heading)) {
        table.rows().forEach(row -> evidence.look(table.cell(row, heading)));
      }
    }
    return new NumberStyle(evidence.mark(table.separator()));
  }

  private static final class Evidence {
    private int points;
    private int commas;
    private boolean openPoint;
    private boolean openComma;

    void look(String cell) {
      String text = plain(cell);
      if (!ONE_MARK.matcher(text).matches()) {
        return;
      }
      boolean comma = text.indexOf(',') >= 0;
      if (MAYBE_THOUSANDS.matcher(text).matches()) {
        openComma |= comma;
        openPoint |= !comma;
      } else if (comma) {
        commas++;
      } else {
        points++;
      }
    }

    /** A comma separates cells where the point separates decimals; a semicolon the other way. */
    Optional<DecimalMark> mark(char separator) {
      if (points + commas > 0) {
        return Optional.of(points >= commas ? DecimalMark.POINT : DecimalMark.COMMA);
      }
      if (separator == ',' && !openComma) {
        return Optional.of(DecimalMark.POINT);
      }
      if (separator == ';' && !openPoint) {
        return Optional.of(DecimalMark.COMMA);
      }
      return Optional.empty();
    }
  }

  /** A number, or why the cell isn't one beyond doubt. */
  record Reading(Optional<BigDecimal> number, Optional<Wrong> wrong) {
    private static Reading of(BigDecimal number) {
      return new Reading(Optional.of(number), Optional.empty());
    }

    private static Reading wrong(Problem problem, Object... parts) {
      return new Reading(Optional.empty(), Optional.of(new Wrong(problem, parts)));
    }
  }

  /**
   * @param parts that follow file, row and column in the problem's sentence
   */
  record Wrong(Problem problem, Object... parts) {}

  Reading read(String cell) {
    String text = plain(cell);
    boolean point = text.indexOf('.') >= 0;
    boolean comma = text.indexOf(',') >= 0;
    if (point && comma) {
      return Reading.wrong(ImportProblem.BOTH_MARKS, cell);
    }
    Optional<BigDecimal> number = Numbers.read(text);
    if (number.isEmpty()) {
      return Reading.wrong(ImportProblem.NOT_A_NUMBER, cell);
    }
    if (!point && !comma) {
      return Reading.of(number.get());
    }
    DecimalMark used = comma ? DecimalMark.COMMA : DecimalMark.POINT;
    if (mark.isEmpty()) {
      return Reading.wrong(ImportProblem.OPEN_NUMBER, cell);
    }
    if (mark.get() != used) {
      return Reading.wrong(ImportProblem.OTHER_MARK, cell, used.word(), used.other().word());
    }
    return Reading.of(number.get());
  }

  private static String plain(String cell) {
    return cell.strip().replace('\u2212', '-').replace('\u2013', '-').replace('\u2010', '-');
  }
}
