package loopwright.importing;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import loopwright.curve.Curve;
import loopwright.curve.CurveCheck;
import loopwright.curve.CurveEntry;
import loopwright.curve.CurveReading;
import loopwright.curve.Remark;
import loopwright.curve.SignConvention;
import loopwright.curve.ToleranceProfile;
import loopwright.problem.Problem;
import loopwright.units.Unit;

/** The readings of one calibration, checked by the same rules as a curve that is typed. */
final class ReadingCells {
  static final List<String> HEADINGS = List.of("gap_um", "gap_mil", "volts", "millivolts");

  private ReadingCells() {}

  /**
   * The curve; empty when its rows were complained of.
   *
   * @param questions takes what would be asked back if the curve were typed
   */
  static Optional<Curve> curve(
      List<RowCells> rows, ToleranceProfile profile, Map<Curve, String> questions) {
    RowCells first = rows.get(0);
    boolean inMil = first.isFilled("gap_mil");
    boolean inMillivolts = first.isFilled("millivolts");
    String gap = inMil ? "gap_mil" : "gap_um";
    String volts = inMillivolts ? "millivolts" : "volts";
    List<CurveEntry.Cells> cells = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      RowCells row = rows.get(i);
      refuseOtherUnit(row, gap, inMil ? "gap_um" : "gap_mil");
      refuseOtherUnit(row, volts, inMillivolts ? "volts" : "millivolts");
      cells.add(
          new CurveEntry.Cells(
              row.place().line(), row.plainNumber(gap), row.plainNumber(volts), row.text("run")));
    }
    if (!rows.stream().allMatch(RowCells::isGood)) {
      return Optional.empty();
    }
    CurveEntry entry =
        new CurveEntry(
            inMil ? Unit.MIL : Unit.MICROMETRE,
            inMillivolts ? Unit.MILLIVOLT : Unit.VOLT,
            SignConvention.NEGATIVE,
            cells);
    CurveCheck check = CurveCheck.toKeep(entry, profile);
    check.complaints().forEach(remark -> complain(rows, remark, gap, volts));
    String asked =
        check.questions().stream().map(Remark::sentence).collect(Collectors.joining(" "));
    check.curve().ifPresent(curve -> questions.put(curve, asked));
    return check.curve();
  }

  private static void refuseOtherUnit(RowCells row, String used, String other) {
    if (row.isFilled(other)) {
      row.complainOfRow(ImportProblem.TWO_UNITS, used, other);
    }
  }

  private static void complain(List<RowCells> rows, Remark remark, String gap, String volts) {
    RowCells row =
        rows.stream().filter(r -> r.place().line() == remark.row()).findFirst().orElse(rows.get(0));
    row.complain(heading(remark, gap, volts), new OfCurve(remark.problem()), remark.sentence());
  }

  private static String heading(Remark remark, String gap, String volts) {
    Remark.Column column = remark.column();
    if (column == Remark.Column.RUN) {
      return "run";
    }
    return column == null || column == Remark.Column.GAP ? gap : volts;
  }

  /** The same gaps and voltages, run by run. */
  static boolean same(Curve one, Curve other) {
    List<CurveReading> a = one.readings();
    List<CurveReading> b = other.readings();
    return a.size() == b.size()
        && IntStream.range(0, a.size()).allMatch(i -> same(a.get(i), b.get(i)));
  }

  private static boolean same(CurveReading one, CurveReading other) {
    return one.run() == other.run()
        && one.gapMicrometres() == other.gapMicrometres()
        && one.volts() == other.volts();
  }

  /** A remark of the curve's check under its own code. */
  private record OfCurve(Problem problem) implements Problem {
    @Override
    public String code() {
      return problem.code();
    }

    @Override
    public String sentence() {
      return "{0}, row {1}, column {2}: {3}";
    }
  }
}
