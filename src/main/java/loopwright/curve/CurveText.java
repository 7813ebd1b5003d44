package loopwright.curve;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import loopwright.units.Numbers;
import loopwright.units.Unit;

/**
 * A block pasted from a spreadsheet: one gap a row with its voltage, then if need be the word up or
 * down, or the voltage of the down run at the same gap. Cells are separated by tab, semicolon,
 * comma with a blank, blank, or comma, the first of these that stands in the block; numbers have a
 * decimal point or, unless the comma separates, a decimal comma. A first line without digits is
 * headings; a unit named there must be the one chosen.
 *
 * @param entry the cells
 * @param complaints rows that aren't readings, and headings that contradict the choice
 */
public record CurveText(CurveEntry entry, List<Remark> complaints) {
  private static final Pattern TAB = Pattern.compile("\t");
  private static final Pattern SEMICOLON = Pattern.compile(";");
  private static final Pattern COMMA_BLANK = Pattern.compile(",\\s+");
  private static final Pattern BLANK = Pattern.compile("\\s+");
  private static final Pattern COMMA = Pattern.compile(",");
  private static final Pattern DIGIT = Pattern.compile("\\d");
  private static final Pattern MIL = Pattern.compile("(?<![a-z])mils?(?![a-z])");
  private static final Pattern MICROMETRE = Pattern.compile("(?<![a-z])(um|microns?)(?![a-z])");
  private static final Pattern MILLIVOLT = Pattern.compile("(?<![a-z])(mv|millivolts?)(?![a-z])");
  private static final Pattern VOLT = Pattern.compile("(?<![a-z])(v|volts)(?![a-z])");

  public CurveText {
    complaints = List.copyOf(complaints);
  }

  /** Reads the block; whatever it holds, there is an answer and no exception. */
  public static CurveText read(String pasted, Unit gapUnit, Unit voltsUnit, SignConvention sign) {
    List<Line> lines = lines(pasted);
    List<Remark> complaints = new ArrayList<>();
    if (!lines.isEmpty() && !DIGIT.matcher(lines.get(0).text()).find()) {
      Line headings = lines.remove(0);
      contradiction(headings, gapUnit, Unit.MIL, MIL, Unit.MICROMETRE, MICROMETRE)
          .ifPresent(complaints::add);
      contradiction(headings, voltsUnit, Unit.MILLIVOLT, MILLIVOLT, Unit.VOLT, VOLT)
          .ifPresent(complaints::add);
    }
    Pattern separator = separator(lines);
    List<CurveEntry.Cells> rows = new ArrayList<>();
    boolean sideBySide = sideBySide(lines, separator);
    for (Line line : lines) {
      row(line, separator, sideBySide, rows, complaints);
    }
    return new CurveText(new CurveEntry(gapUnit, voltsUnit, sign, rows), complaints);
  }

  /** The readings checked; the complaints of the block come first. */
  public CurveCheck check(ToleranceProfile profile) {
    CurveCheck check = CurveCheck.of(entry, profile);
    if (complaints.isEmpty()) {
      return check;
    }
    List<Remark> all = new ArrayList<>(complaints);
    all.addAll(check.complaints());
    return CurveCheck.stopped(all);
  }

  private record Line(int row, String text) {}

  private static List<Line> lines(String pasted) {
    List<Line> lines = new ArrayList<>();
    int row = 0;
    for (String line : pasted.replace("\uFEFF", "").replace('\u00A0', ' ').split("\\R", -1)) {
      row++;
      if (!line.isBlank()) {
        lines.add(new Line(row, line));
      }
    }
    return lines;
  }

  private static Pattern separator(List<Line> lines) {
    if (any(lines, TAB.asPredicate())) {
      return TAB;
    }
    if (any(lines, SEMICOLON.asPredicate())) {
      return SEMICOLON;
    }
    Predicate<String> inside = text -> COMMA_BLANK.matcher(text.strip()).find();
    if (any(lines, inside)) {
      return COMMA_BLANK;
    }
    return any(lines, text -> BLANK.matcher(text.strip()).find()) ? BLANK : COMMA;
  }

  private static boolean any(List<Line> lines, Predicate<String> test) {
    return lines.stream().anyMatch(line -> test.test(line.text()));
  }

  private static void row(
      Line line,
      Pattern separator,
      boolean sideBySide,
      List<CurveEntry.Cells> rows,
      List<Remark> complaints) {
    List<String> cells = cells(line.text(), separator);
    if (cells.size() > 3) {
      complaints.add(Remark.at(line.row(), null, CurveProblem.TOO_MANY_CELLS, cells.size()));
      return;
    }
    String gap = cells.get(0);
    String volts = cells.size() > 1 ? cells.get(1) : "";
    String third = cells.size() > 2 ? cells.get(2) : "";
    if (sideBySide && separator == COMMA) {
      complaints.add(Remark.at(line.row(), null, CurveProblem.COMMAS));
    } else if (!sideBySide) {
      rows.add(new CurveEntry.Cells(line.row(), gap, volts, third));
    } else {
      sideBySide(line, gap, volts, third, rows);
    }
  }

  /** Either run may lack a reading at a gap. */
  private static void sideBySide(
      Line line, String gap, String up, String down, List<CurveEntry.Cells> rows) {
    if (!up.isEmpty() || down.isEmpty()) {
      rows.add(new CurveEntry.Cells(line.row(), gap, up, Run.UP.label()));
    }
    if (!down.isEmpty()) {
      rows.add(
          new CurveEntry.Cells(line.row(), gap, down, Run.DOWN.label(), Remark.Column.DOWN_VOLTS));
    }
  }

  /** Do third cells hold numbers, the voltages of the down run? */
  private static boolean sideBySide(List<Line> lines, Pattern separator) {
    return lines.stream()
        .map(line -> cells(line.text(), separator))
        .anyMatch(cells -> cells.size() == 3 && Numbers.read(cells.get(2)).isPresent());
  }

  /** Stripped, without empty cells at the end. */
  private static List<String> cells(String text, Pattern separator) {
    String row = separator == TAB ? text : text.strip();
    List<String> cells = new ArrayList<>();
    for (String cell : separator.split(row)) {
      cells.add(cell.strip());
    }
    while (cells.size() > 1 && cells.get(cells.size() - 1).isEmpty()) {
      cells.remove(cells.size() - 1);
    }
    return cells.isEmpty() ? List.of("") : cells;
  }

  private static Optional<Remark> contradiction(
      Line headings, Unit chosen, Unit one, Pattern sayingOne, Unit other, Pattern sayingOther) {
    String words = headings.text().toLowerCase(Locale.ROOT).replace('µ', 'u').replace('μ', 'u');
    boolean saysOne = sayingOne.matcher(words).find();
    boolean saysOther = sayingOther.matcher(words).find();
    if (saysOne == saysOther) {
      return Optional.empty();
    }
    Unit said = saysOne ? one : other;
    return said == chosen
        ? Optional.empty()
        : Optional.of(
            Remark.at(
                headings.row(), null, CurveProblem.HEADING_UNIT, said.symbol(), chosen.symbol()));
  }
}
