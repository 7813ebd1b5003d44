package loopwright.sheet;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import loopwright.problem.Refused;

/** What makes filled cells headings and rows below them, whatever kind of file they come from. */
final class RowShape {
  private RowShape() {}

  static boolean isFilled(List<String> cells) {
    return cells.stream().anyMatch(cell -> !cell.isBlank());
  }

  /**
   * A table without rows.
   *
   * @param each takes all but the last of what is wrong; that one is thrown
   */
  static Table head(
      String name, char separator, int line, List<String> cells, Consumer<Refused> each) {
    List<String> headings = new ArrayList<>();
    List<Refused> wrong = new ArrayList<>();
    for (String cell : withoutTrailingBlanks(cells)) {
      String heading = cell.strip().toLowerCase(Locale.ROOT);
      int column = headings.size() + 1;
      if (heading.isEmpty()) {
        wrong.add(new Refused(SheetProblem.BLANK_HEADING, name, line, column));
      } else if (headings.contains(heading)) {
        wrong.add(new Refused(SheetProblem.REPEATED_HEADING, name, line, column, heading));
      }
      headings.add(heading);
    }
    if (!wrong.isEmpty()) {
      wrong.subList(0, wrong.size() - 1).forEach(each);
      throw wrong.get(wrong.size() - 1);
    }
    return new Table(name, separator, line, List.copyOf(headings), List.of());
  }

  /** A row under those headings; refuses one that is longer. */
  static Table.Row row(Table head, int line, List<String> cells) {
    List<String> filled = withoutTrailingBlanks(cells);
    int columns = head.headings().size();
    if (filled.size() > columns) {
      throw new Refused(SheetProblem.TOO_MANY_CELLS, head.name(), line, filled.size(), columns);
    }
    String[] all = new String[columns];
    Arrays.fill(all, "");
    for (int i = 0; i < filled.size(); i++) {
      all[i] = filled.get(i).strip();
    }
    return new Table.Row(line, List.of(all));
  }

  private static List<String> withoutTrailingBlanks(List<String> cells) {
    int length = cells.size();
    while (length > 0 && cells.get(length - 1).isBlank()) {
      length--;
    }
    return cells.subList(0, length);
  }
}
