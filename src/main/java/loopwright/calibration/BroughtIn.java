package loopwright.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import loopwright.curve.CurveCheck;
import loopwright.curve.CurveEntry;
import loopwright.curve.CurveFile;
import loopwright.curve.CurveProblem;
import loopwright.curve.CurveText;
import loopwright.curve.Remark;
import loopwright.curve.Run;
import loopwright.problem.Refused;
import loopwright.sheet.CsvReader;
import loopwright.web.Form;

/**
 * Puts the readings of a file or of a pasted block into a form's rows, where they can be looked
 * over; nothing is kept yet. What is typed already stays unless its writer said to replace it.
 */
final class BroughtIn {
  private static final int MOST_MEGABYTES = 2;
  private static final String FILE = "file";
  private static final String BLOCK = "block";

  private final Form form;

  BroughtIn(Form form) {
    this.form = form;
  }

  /** From a CSV file; what is wrong with it is told at its field. */
  void file(String name, byte[] content) {
    if (content.length == 0) {
      form.complain(
          FILE, "Choose a CSV file with the columns gap_um or gap_mil, and volts or millivolts.");
      return;
    }
    try {
      CurveFile file = CurveFile.of(new CsvReader(MOST_MEGABYTES).read(name, content));
      CurveEntry entry = file.entry();
      List<Remark> unplaceable = unplaceable(entry);
      if (unplaceable.isEmpty()) {
        fill(FILE, entry);
      } else {
        complain(FILE, unplaceable, file::place);
      }
    } catch (Refused refused) {
      form.complain(FILE, refused.getMessage());
    }
  }

  /** From a block copied out of a spreadsheet, in the units that are chosen. */
  void block() {
    Optional<CurveEntry> scales = new CurveForm(form).scales();
    if (scales.isEmpty()) {
      return;
    }
    CurveEntry as = scales.get();
    CurveText text = CurveText.read(form.typed(BLOCK), as.gapUnit(), as.voltsUnit(), as.sign());
    List<Remark> wrong = new ArrayList<>(text.complaints());
    wrong.addAll(unplaceable(text.entry()));
    if (!wrong.isEmpty()) {
      complain(BLOCK, wrong, remark -> "Line " + remark.row() + ": " + remark.sentence());
    } else if (fill(BLOCK, text.entry())) {
      form.put(BLOCK, "");
    }
  }

  /** What has no row to go to: everything else is shown in its row, and put right there. */
  private static List<Remark> unplaceable(CurveEntry entry) {
    if (entry.rows().isEmpty()) {
      return List.of(CurveCheck.nothing());
    }
    return CurveCheck.alone(entry).complaints().stream()
        .filter(
            remark ->
                remark.column() == Remark.Column.RUN
                    || remark.problem() == CurveProblem.TOO_MANY_READINGS)
        .toList();
  }

  private void complain(String field, List<Remark> remarks, Function<Remark, String> words) {
    form.complain(field, remarks.stream().limit(10).map(words).collect(Collectors.joining(" ")));
  }

  private boolean fill(String field, CurveEntry entry) {
    if (new CurveForm(form).anythingTyped() && !form.chosen("replace", "yes")) {
      form.complain(
          field,
          "The rows hold readings already, and they stay. Tick \u201cReplace what stands in the"
              + " rows\u201d and send this again if you mean to.");
      return false;
    }
    List<String[]> rows = new ArrayList<>();
    for (CurveEntry.Cells cells : entry.rows()) {
      boolean down = Run.named(cells.run()).filter(run -> run == Run.DOWN).isPresent();
      rowFor(rows, cells.gap(), down ? 2 : 1)[down ? 2 : 1] = cells.volts();
    }
    form.put("gap", column(rows, 0)).put("up", column(rows, 1)).put("down", column(rows, 2));
    form.put("gap-unit", entry.gapUnit().symbol());
    form.put("volts-unit", entry.voltsUnit().symbol());
    form.put("sign", entry.sign().label());
    form.put("replace", List.of());
    return true;
  }

  /** Up and down at one gap share a row; a gap that comes twice in one run gets another. */
  private static String[] rowFor(List<String[]> rows, String gap, int column) {
    Optional<String[]> free =
        rows.stream().filter(row -> row[0].equals(gap) && row[column].isEmpty()).findFirst();
    if (free.isPresent()) {
      return free.get();
    }
    String[] fresh = {gap, "", ""};
    rows.add(fresh);
    return fresh;
  }

  private static List<String> column(List<String[]> rows, int column) {
    return rows.stream().map(row -> row[column]).toList();
  }
}
