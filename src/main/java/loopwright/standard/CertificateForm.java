package loopwright.standard;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.time.SiteMoment;
import loopwright.units.Reported;
import loopwright.units.Unit;
import loopwright.web.Form;

/** Reads the page on which a certificate is typed: a row a range. */
final class CertificateForm {
  static final int ROWS = 4;
  static final List<String> CELLS =
      List.of("low", "high", "correction", "uncertainty", "scale", "resolution");
  private static final int NUMBER = 80;
  private static final int ISSUER = 120;
  private static final int NOTE = 2000;
  private static final int CELL = 30;

  private final Form form;
  private final StandardKind kind;

  CertificateForm(Form form, StandardKind kind) {
    this.form = form;
    this.kind = kind;
  }

  /** A row of the table as typed. */
  record Row(int number, List<String> cells) {
    boolean isBlank() {
      return cells.stream().allMatch(String::isBlank);
    }
  }

  List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    int typed = CELLS.stream().mapToInt(cell -> form.every(cell).size()).max().orElse(0);
    for (int i = 0; i < Math.max(ROWS, typed); i++) {
      int row = i;
      rows.add(new Row(i + 1, CELLS.stream().map(cell -> at(cell, row)).toList()));
    }
    return rows;
  }

  private String at(String cell, int row) {
    List<String> cells = form.every(cell);
    return row < cells.size() ? cells.get(row).strip() : "";
  }

  /** The certificate; empty, and said at the fields, if something is wrong. */
  Optional<Certificate> read() {
    String number = form.read("number", typed -> Text.needed("the number", typed, NUMBER));
    String issuer = form.read("issuer", typed -> Text.needed("who issued it", typed, ISSUER));
    LocalDate issued = form.read("issued", SiteMoment::day);
    LocalDate due = form.read("due", SiteMoment::day);
    BigDecimal factor = form.number("factor");
    String note = form.read("note", typed -> Text.kept("the note", typed, NOTE));
    List<CertifiedRange> ranges = ranges();
    if (!form.ok()) {
      return Optional.empty();
    }
    try {
      return Optional.of(new Certificate(0, number, issuer, issued, due, factor, ranges, note));
    } catch (Refused wrong) {
      complain(wrong);
      return Optional.empty();
    }
  }

  /** At the field it belongs to, where it belongs to one. */
  void complain(Refused wrong) {
    String said = wrong.getMessage();
    if (wrong.problem() == StandardProblem.DUE_BEFORE_ISSUE) {
      form.complain("due", said);
    } else if (wrong.problem() == StandardProblem.COVERAGE_FACTOR) {
      form.complain("factor", said);
    } else if (wrong.problem() == StandardProblem.ISSUED_IN_FUTURE) {
      form.complain("issued", said);
    } else if (wrong.problem() == StandardProblem.AGAINST_ITSELF
        || wrong.problem() == StandardProblem.REFERENCE_WITHOUT) {
      form.complain("against", said);
    } else if (wrong.problem() == StandardProblem.CERTIFICATE_TAKEN) {
      form.complain("number", said);
    } else {
      form.complain(wrong);
    }
  }

  private List<CertifiedRange> ranges() {
    List<CertifiedRange> ranges = new ArrayList<>();
    List<Row> typed = rows().stream().filter(row -> !row.isBlank()).toList();
    if (typed.isEmpty()) {
      return ranges;
    }
    Unit unit = unit();
    for (Row row : typed) {
      try {
        ranges.add(range(row, unit));
      } catch (Refused wrong) {
        form.complain(wrong);
      } catch (NumberFormatException wrong) {
        form.complain(
            "Range %s: \u201c%s\u201d is not one number. Give it such as 0.5 or 0,5."
                .formatted(row.number(), wrong.getMessage()));
      }
    }
    return ranges;
  }

  private Unit unit() {
    return kind.units().stream()
        .filter(each -> each.symbol().equals(form.typed("unit")))
        .findFirst()
        .orElseGet(
            () -> {
              form.complain(
                  "unit",
                  kind.units().isEmpty()
                      ? Refused.say(StandardProblem.RANGES_OF_OTHER)
                      : "Choose the unit of the ranges.");
              return Unit.MICROMETRE;
            });
  }

  private static CertifiedRange range(Row row, Unit unit) {
    List<String> cells = row.cells();
    return new CertifiedRange(
        row.number(),
        number(cells.get(0), unit),
        number(cells.get(1), unit),
        number(cells.get(2).isEmpty() ? "0" : cells.get(2), unit),
        number(cells.get(3), unit),
        Optional.of(cells.get(4)).filter(c -> !c.isEmpty()).map(CertificateForm::percent),
        Optional.of(cells.get(5)).filter(c -> !c.isEmpty()).map(c -> number(c, unit)));
  }

  private static CertifiedRange.Percent percent(String cell) {
    return CertifiedRange.Percent.read(notTooLong(cell));
  }

  private static Reported number(String cell, Unit unit) {
    return Reported.read(notTooLong(cell), unit).orElseThrow(() -> new NumberFormatException(cell));
  }

  private static String notTooLong(String cell) {
    if (cell.length() > CELL) {
      throw new NumberFormatException(cell.substring(0, CELL) + "…");
    }
    return cell;
  }
}
