package loopwright.sheet;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;
import loopwright.problem.Nearest;
import loopwright.problem.Problem;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.Unit;

/**
 * Typed cells of one table. What can't be read is complained of and reads as empty, so that reading
 * can go on to find everything else that is wrong.
 */
public final class Cells {
  private final Table table;
  private final Complaints complaints;

  public Cells(Table table, Complaints complaints) {
    this.table = table;
    this.complaints = complaints;
  }

  /** Whether any of the row's cells under these headings is filled. */
  public boolean anyFilled(Table.Row row, List<String> headings) {
    return headings.stream().anyMatch(heading -> !table.cell(row, heading).isEmpty());
  }

  /**
   * @return empty when the cell is
   */
  public Optional<String> text(Table.Row row, String heading, int mostCharacters) {
    String text = table.cell(row, heading);
    if (text.length() > mostCharacters) {
      complain(row, heading, SheetProblem.TEXT_TOO_LONG, text.length(), mostCharacters);
      return Optional.empty();
    }
    return text.isEmpty() ? Optional.empty() : Optional.of(text);
  }

  /** As {@link #text}; an empty cell is complained of. */
  public Optional<String> neededText(Table.Row row, String heading, int mostCharacters) {
    if (table.cell(row, heading).isEmpty()) {
      complain(row, heading, SheetProblem.NOTHING_GIVEN);
    }
    return text(row, heading, mostCharacters);
  }

  public Optional<BigDecimal> number(Table.Row row, String heading) {
    return read(row, heading, Numbers::read, SheetProblem.NOT_A_NUMBER);
  }

  /** In the unit that the table's heading names. */
  public Optional<Reported> quantity(Table.Row row, UnitColumn column) {
    Optional<Unit> unit = column.unitIn(table);
    return unit.flatMap(
        given ->
            read(
                row,
                column.heading(given),
                text -> Reported.read(text, given),
                SheetProblem.NOT_A_NUMBER));
  }

  /** Numbers between which stand spaces or {@code |}. */
  public List<Reported> quantities(Table.Row row, UnitColumn column) {
    Optional<Unit> unit = column.unitIn(table);
    return unit.flatMap(
            given ->
                read(
                    row, column.heading(given), text -> list(text, given), SheetProblem.NOT_A_LIST))
        .orElse(List.of());
  }

  /** Where the comma separates cells it is not read as a decimal mark in a list: 1,4 may be two. */
  private Optional<List<Reported>> list(String text, Unit unit) {
    if (table.separator() == ',' && text.indexOf(',') >= 0) {
      return Optional.empty();
    }
    List<Reported> numbers = new ArrayList<>();
    for (String word : text.strip().split("[\\s|]+")) {
      Optional<Reported> number = Reported.read(word, unit);
      if (number.isEmpty()) {
        return Optional.empty();
      }
      numbers.add(number.get());
    }
    return Optional.of(numbers);
  }

  /**
   * @param choices by the lower-case word that stands for each
   */
  public <T> Optional<T> choice(Table.Row row, String heading, Map<String, T> choices) {
    String typed = table.cell(row, heading);
    if (typed.isEmpty()) {
      return Optional.empty();
    }
    String word = typed.toLowerCase(Locale.ROOT);
    Optional<T> chosen = Optional.ofNullable(choices.get(word));
    if (chosen.isEmpty()) {
      complain(
          row,
          heading,
          SheetProblem.NOT_A_CHOICE,
          typed,
          String.join(", ", new TreeSet<>(choices.keySet())),
          Nearest.word(word, choices.keySet()));
    }
    return chosen;
  }

  private <T> Optional<T> read(
      Table.Row row, String heading, Function<String, Optional<T>> reading, Problem problem) {
    String text = table.cell(row, heading);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    Optional<T> value = reading.apply(text);
    if (value.isEmpty()) {
      complain(row, heading, problem, shown(text));
    }
    return value;
  }

  /** Complains of one cell; the place is put before the parts. */
  public void complain(Table.Row row, String heading, Problem problem, Object... parts) {
    Object[] all = new Object[parts.length + 3];
    all[0] = table.name();
    all[1] = row.line();
    all[2] = heading;
    System.arraycopy(parts, 0, all, 3, parts.length);
    complaints.add(problem, all);
  }

  /** A cell as a message shows it: on one line, and not longer than a message should be. */
  static String shown(String text) {
    String line = oneLine(text);
    return line.length() > 60 ? line.substring(0, 60) + "…" : line;
  }

  /** Text that may come from a cell, fit for a line of its own on a terminal. */
  public static String oneLine(String text) {
    return text.replaceAll("[\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}\\s]+", " ");
  }
}
