package loopwright.curve;

import java.util.ArrayList;
import java.util.List;
import loopwright.problem.Refused;
import loopwright.sheet.Headings;
import loopwright.sheet.Table;
import loopwright.units.Unit;

/**
 * A curve as a CSV file: {@code gap_um} or {@code gap_mil}, {@code volts} or {@code millivolts},
 * and if need be {@code run} ({@code up} or {@code down}, empty for up).
 */
public final class CurveFile {
  private static final List<String> GAPS = List.of("gap_um", "gap_mil");
  private static final List<String> VOLTS = List.of("volts", "millivolts");
  private static final String RUN = "run";
  private static final List<String> KNOWN =
      List.of(GAPS.get(0), GAPS.get(1), VOLTS.get(0), VOLTS.get(1), RUN);

  private final Table table;
  private final String gap;
  private final String volts;

  private CurveFile(Table table) {
    this.table = table;
    Headings.refuseUnknown(table, KNOWN);
    this.gap = oneOf(table, GAPS);
    this.volts = oneOf(table, VOLTS);
  }

  /**
   * @throws Refused when a heading is unknown or missing, or says the same as another
   */
  public static CurveFile of(Table table) {
    return new CurveFile(table);
  }

  private static String oneOf(Table table, List<String> pair) {
    List<String> present = pair.stream().filter(table::has).toList();
    if (present.size() == 1) {
      return present.get(0);
    }
    CurveProblem problem = present.isEmpty() ? CurveProblem.NO_COLUMN : CurveProblem.TWO_COLUMNS;
    throw new Refused(problem, table.name(), table.headingLine(), pair.get(0), pair.get(1));
  }

  /** The cells, outputs taken as written with their sign. */
  public CurveEntry entry() {
    List<CurveEntry.Cells> rows = new ArrayList<>();
    for (Table.Row row : table.rows()) {
      rows.add(
          new CurveEntry.Cells(
              row.line(), table.cell(row, gap), table.cell(row, volts), table.cell(row, RUN)));
    }
    return new CurveEntry(
        gap.equals(GAPS.get(0)) ? Unit.MICROMETRE : Unit.MIL,
        volts.equals(VOLTS.get(0)) ? Unit.VOLT : Unit.MILLIVOLT,
        SignConvention.NEGATIVE,
        rows);
  }

  /** The remark with file, row and column: {@code curve.csv, row 3, column volts: …}. */
  public String place(Remark remark) {
    StringBuilder place = new StringBuilder(table.name());
    if (remark.row() > 0) {
      place.append(", row ").append(remark.row());
    }
    if (remark.column() != null) {
      place.append(", column ").append(heading(remark.column()));
    }
    return place.append(": ").append(remark.sentence()).toString();
  }

  private String heading(Remark.Column column) {
    return switch (column) {
      case GAP -> gap;
      case VOLTS, DOWN_VOLTS -> volts;
      case RUN -> RUN;
    };
  }
}
