package loopwright.registerfile;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import loopwright.problem.Problem;
import loopwright.sheet.Cells;
import loopwright.sheet.Table;
import loopwright.sheet.UnitColumn;
import loopwright.units.Length;
import loopwright.units.Reported;
import loopwright.units.ScaleFactor;

/** Cells that must hold a possible length, tip or scale factor. */
final class Quantities {
  private static final Length SHORTEST = Length.ofMetres("0.1");
  private static final Length LONGEST = Length.ofMetres("60");
  private static final Length WIDEST_TOLERANCE = Length.ofMetres("1");
  private static final BigDecimal SMALLEST_TIP = BigDecimal.ONE;
  private static final BigDecimal LARGEST_TIP = new BigDecimal("100");
  private static final double LEAST_SCALE_FACTOR = 0.01;
  private static final double MOST_SCALE_FACTOR = 50;

  private final Table table;
  private final Cells cells;

  Quantities(Table table, Cells cells) {
    this.table = table;
    this.cells = cells;
  }

  Optional<Length> length(Table.Row row, UnitColumn column) {
    return cells
        .quantity(row, column)
        .filter(typed -> accept(row, column, typed, isPossible(Length.of(typed))))
        .map(Length::of);
  }

  /** As {@link #length}, but 0 reads as empty: nothing is fitted. */
  Optional<Length> lengthOrNone(Table.Row row, UnitColumn column) {
    return cells.quantity(row, column).filter(typed -> typed.amount().signum() == 0).isPresent()
        ? Optional.empty()
        : length(row, column);
  }

  List<Length> lengths(Table.Row row, UnitColumn column) {
    return cells.quantities(row, column).stream()
        .filter(typed -> accept(row, column, typed, isPossible(Length.of(typed))))
        .map(Length::of)
        .toList();
  }

  Optional<Length> tolerance(Table.Row row, UnitColumn column) {
    return cells
        .quantity(row, column)
        .filter(
            typed ->
                typed.amount().signum() >= 0 && Length.of(typed).compareTo(WIDEST_TOLERANCE) <= 0
                    || complain(row, column, typed, RegisterFileProblem.IMPOSSIBLE_TOLERANCE))
        .map(Length::of);
  }

  Optional<BigDecimal> tip(Table.Row row, String heading) {
    Optional<BigDecimal> tip = cells.number(row, heading);
    boolean possible =
        tip.filter(mm -> mm.compareTo(SMALLEST_TIP) >= 0 && mm.compareTo(LARGEST_TIP) <= 0)
            .isPresent();
    if (tip.isPresent() && !possible) {
      cells.complain(row, heading, RegisterFileProblem.IMPOSSIBLE_TIP, table.cell(row, heading));
      return Optional.empty();
    }
    return tip;
  }

  Optional<ScaleFactor> scaleFactor(Table.Row row, UnitColumn column) {
    return cells
        .quantity(row, column)
        .filter(
            typed ->
                typed.canonical() >= LEAST_SCALE_FACTOR && typed.canonical() <= MOST_SCALE_FACTOR
                    || complain(row, column, typed, RegisterFileProblem.IMPOSSIBLE_SCALE_FACTOR))
        .map(typed -> new ScaleFactor(typed.amount(), typed.unit()));
  }

  private static boolean isPossible(Length length) {
    return length.compareTo(SHORTEST) >= 0 && length.compareTo(LONGEST) <= 0;
  }

  private boolean accept(Table.Row row, UnitColumn column, Reported typed, boolean possible) {
    return possible || complain(row, column, typed, RegisterFileProblem.IMPOSSIBLE_LENGTH);
  }

  /** Always false, so that a filter can end in it. */
  private boolean complain(Table.Row row, UnitColumn column, Reported typed, Problem problem) {
    cells.complain(row, column.heading(typed.unit()), problem, typed.typed());
    return false;
  }
}
