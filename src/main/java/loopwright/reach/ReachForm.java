package loopwright.reach;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.problem.Refused;
import loopwright.standard.CertifiedRange;
import loopwright.standard.Standard;
import loopwright.standard.StandardKind;
import loopwright.time.SiteMoment;
import loopwright.units.Numbers;
import loopwright.units.Unit;
import loopwright.web.Form;

/** Reads by how much a standard was wrong, and since when: a row a range. */
final class ReachForm {
  private static final int ROWS = 3;
  private static final List<String> CELLS = List.of("low", "high", "offset", "percent");

  private ReachForm() {}

  /** A row of the form. */
  record Row(int number, List<String> cells) {}

  static Map<String, String> units(StandardKind kind) {
    Map<String, String> units = new LinkedHashMap<>();
    kind.units().forEach(unit -> units.put(unit.symbol(), unit.symbol()));
    return units;
  }

  static List<Row> rows(Form form) {
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < ROWS; i++) {
      int row = i;
      rows.add(new Row(i + 1, CELLS.stream().map(cell -> at(form, cell, row)).toList()));
    }
    return rows;
  }

  private static String at(Form form, String cell, int row) {
    List<String> cells = form.every(cell);
    return row < cells.size() ? cells.get(row).strip() : "";
  }

  /** What the form asks for; empty, and said in the form, if something is wrong. */
  static Optional<Reached.Asked> asked(Standard standard, Form form) {
    LocalDate from = form.read("from", SiteMoment::day);
    LocalDate until = form.read("until", SiteMoment::day);
    try {
      Optional<StandardError> error =
          standard.kind().units().isEmpty()
              ? nothingToSay(standard, form)
              : Optional.of(error(standard, form));
      if (form.ok() && !from.isBefore(until)) {
        throw new Refused(ReachProblem.DATES, until, from);
      }
      return form.ok() ? Optional.of(new Reached.Asked(error, from, until)) : Optional.empty();
    } catch (Refused refused) {
      form.complain(refused);
    } catch (NumberFormatException wrong) {
      form.complain(
          "\u201c" + wrong.getMessage() + "\u201d is not one number. Give it such as -0.5 or 0,2.");
    }
    return Optional.empty();
  }

  /** What neither sets gaps nor measures outputs has no error in them. */
  private static Optional<StandardError> nothingToSay(Standard standard, Form form) {
    if (rows(form).stream().anyMatch(row -> row.cells().stream().anyMatch(c -> !c.isEmpty()))) {
      throw new Refused(ReachProblem.NO_QUANTITY, standard.code());
    }
    return Optional.empty();
  }

  private static StandardError error(Standard standard, Form form) {
    Unit unit =
        standard.kind().units().stream()
            .filter(each -> each.symbol().equals(form.typed("unit")))
            .findFirst()
            .orElseGet(
                () -> {
                  form.complain("unit", "Choose the unit of the error.");
                  return standard.kind().units().get(0);
                });
    List<StandardError.Range> ranges = new ArrayList<>();
    for (Row row : rows(form)) {
      boolean noError = row.cells().get(2).isEmpty() && row.cells().get(3).isEmpty();
      if (!noError) {
        ranges.add(range(standard, row, unit));
      }
    }
    return new StandardError(standard.kind(), ranges);
  }

  private static StandardError.Range range(Standard standard, Row row, Unit unit) {
    String low = row.cells().get(0);
    String high = row.cells().get(1);
    if (low.isEmpty() != high.isEmpty()) {
      throw new Refused(ReachProblem.ONE_END, row.number());
    }
    BigDecimal whole =
        standard.newest().stream()
            .flatMap(c -> c.ranges().stream())
            .map(CertifiedRange::high)
            .map(end -> end.unit().toCanonical(end.amount()))
            .max(BigDecimal::compareTo)
            .orElse(BigDecimal.valueOf(1_000_000));
    return new StandardError.Range(
        row.number(),
        low.isEmpty() ? BigDecimal.ZERO : unit.toCanonical(number(low)),
        high.isEmpty() ? whole : unit.toCanonical(number(high)),
        unit.toCanonical(number(row.cells().get(2))),
        number(row.cells().get(3)));
  }

  private static BigDecimal number(String cell) {
    return cell.isEmpty()
        ? BigDecimal.ZERO
        : Numbers.read(cell).orElseThrow(() -> new NumberFormatException(cell));
  }
}
