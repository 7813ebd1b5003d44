package loopwright.curve;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.units.Reported;
import loopwright.units.Unit;

/** Reads the cells of one entry and gathers what is wrong or doubtful about them. */
final class CellCheck {
  private static final double LOWEST_VOLTS = -30;
  private static final double LOWEST_ON_24_VOLTS = -23.5;
  private static final double LARGEST_GAP = 60_000;
  private static final double TINY_VOLTS = 0.05;

  private final CurveEntry entry;
  private final boolean runsAreNamed;
  private final List<Remark> complaints = new ArrayList<>();
  private final List<Placed> read = new ArrayList<>();

  private CellCheck(CurveEntry entry) {
    this.entry = entry;
    this.runsAreNamed = entry.rows().stream().anyMatch(cells -> !cells.run().isBlank());
  }

  /** Every cell read; counts and profile are not looked at yet. */
  static CellCheck of(CurveEntry entry) {
    CellCheck check = new CellCheck(entry);
    entry.rows().forEach(check::read);
    check.signs();
    check.repeats();
    return check;
  }

  /** By row. */
  List<Remark> complaints() {
    return complaints.stream().sorted(Comparator.comparingInt(Remark::row)).toList();
  }

  /** What could be read. */
  List<CurveReading> readings() {
    return read.stream().map(Placed::reading).toList();
  }

  private void read(CurveEntry.Cells cells) {
    Optional<Reported> gap = number(cells.row(), Remark.Column.GAP, cells.gap());
    Optional<Reported> output = number(cells.row(), cells.voltsColumn(), cells.volts());
    Optional<Run> run = run(cells);
    boolean gapGood = gap.filter(g -> possibleGap(cells.row(), g)).isPresent();
    boolean outputGood = output.filter(o -> possibleOutput(cells, o)).isPresent();
    if (gapGood && outputGood && run.isPresent()) {
      read.add(
          new Placed(cells, CurveReading.of(run.get(), gap.orElseThrow(), output.orElseThrow())));
    }
  }

  private Optional<Reported> number(int row, Remark.Column column, String text) {
    if (text.isBlank()) {
      complain(
          row, column, CurveProblem.EMPTY_CELL, column == Remark.Column.GAP ? "gap" : "voltage");
      return Optional.empty();
    }
    Optional<Reported> number = Reported.read(text, unit(column));
    if (number.isEmpty()) {
      complain(row, column, CurveProblem.NOT_A_NUMBER, text.strip());
    }
    return number;
  }

  /** An empty cell means up only where nobody names runs at all. */
  private Optional<Run> run(CurveEntry.Cells cells) {
    if (runsAreNamed && cells.run().isBlank()) {
      complain(cells.row(), Remark.Column.RUN, CurveProblem.EMPTY_CELL, "run, up or down");
      return Optional.empty();
    }
    Optional<Run> run = Run.named(cells.run());
    if (run.isEmpty()) {
      complain(cells.row(), Remark.Column.RUN, CurveProblem.UNKNOWN_RUN, cells.run().strip());
    }
    return run;
  }

  private Unit unit(Remark.Column column) {
    return column == Remark.Column.GAP ? entry.gapUnit() : entry.voltsUnit();
  }

  private boolean possibleGap(int row, Reported gap) {
    if (gap.amount().signum() < 0) {
      complain(row, Remark.Column.GAP, CurveProblem.NEGATIVE_GAP, gap);
      return false;
    }
    if (gap.canonical() > LARGEST_GAP) {
      boolean likelyMicrometres = gap.amount().doubleValue() <= LARGEST_GAP;
      complain(
          row,
          Remark.Column.GAP,
          CurveProblem.GAP_TOO_LARGE,
          gap,
          likelyMicrometres ? " If these are µm, say µm." : "");
      return false;
    }
    return true;
  }

  private boolean possibleOutput(CurveEntry.Cells cells, Reported output) {
    double volts = Math.abs(output.canonical());
    if (volts <= -LOWEST_VOLTS) {
      return true;
    }
    boolean likelyMillivolts = entry.voltsUnit() == Unit.VOLT && volts / 1000 <= -LOWEST_VOLTS;
    complain(
        cells.row(),
        cells.voltsColumn(),
        CurveProblem.IMPOSSIBLE_VOLTAGE,
        output,
        likelyMillivolts ? " If these are millivolts, say mV." : "");
    return false;
  }

  private void complain(int row, Remark.Column column, CurveProblem problem, Object... parts) {
    complaints.add(Remark.at(row, column, problem, parts));
  }

  /** The rarer sign is the one asked about; of equals the positive. */
  private void signs() {
    long positive = read.stream().filter(placed -> placed.sign() > 0).count();
    long negative = read.stream().filter(placed -> placed.sign() < 0).count();
    if (positive == 0 || negative == 0) {
      return;
    }
    int odd = positive <= negative ? 1 : -1;
    for (Placed placed : read) {
      if (placed.sign() == odd) {
        complaints.add(
            placed.remark(
                placed.cells().voltsColumn(),
                CurveProblem.MIXED_SIGNS,
                placed.reading().output(),
                odd > 0 ? "positive" : "negative",
                odd > 0 ? "negative" : "positive"));
      }
    }
  }

  private void repeats() {
    Map<Run, Map<Double, Integer>> seen = new HashMap<>();
    for (Placed placed : read) {
      CurveReading reading = placed.reading();
      Integer first =
          seen.computeIfAbsent(reading.run(), run -> new HashMap<>())
              .putIfAbsent(reading.gapMicrometres(), placed.cells().row());
      if (first != null) {
        complaints.add(
            placed.remark(
                Remark.Column.GAP,
                CurveProblem.REPEATED_GAP,
                reading.gap(),
                reading.run().label(),
                first));
      }
    }
  }

  /** Complains of runs that are too short for a curve. */
  void counts() {
    Map<Run, Long> counts =
        read.stream()
            .collect(
                Collectors.groupingBy(placed -> placed.reading().run(), Collectors.counting()));
    for (Run run : Run.values()) {
      long count = counts.getOrDefault(run, (long) Curve.FEWEST);
      if (count < Curve.FEWEST) {
        complaints.add(
            Remark.at(
                firstRow(run),
                null,
                CurveProblem.TOO_FEW_READINGS,
                run.label(),
                count == 1 ? "1 reading" : count + " readings"));
      }
    }
  }

  private int firstRow(Run run) {
    return read.stream()
        .filter(placed -> placed.reading().run() == run)
        .mapToInt(placed -> placed.cells().row())
        .min()
        .orElse(0);
  }

  List<Remark> questions() {
    List<Remark> questions = new ArrayList<>();
    boolean positive = read.stream().anyMatch(placed -> placed.sign() > 0);
    if (positive && entry.sign() == SignConvention.NEGATIVE) {
      questions.add(Remark.at(0, Remark.Column.VOLTS, CurveProblem.MAGNITUDES));
    }
    double lowest =
        read.stream().mapToDouble(placed -> placed.reading().volts()).min().orElseThrow();
    if (entry.voltsUnit() == Unit.MILLIVOLT && lowest < 0 && lowest > -TINY_VOLTS) {
      questions.add(Remark.at(0, Remark.Column.VOLTS, CurveProblem.VOLTS_UNIT_SLIP, "50 mV"));
    }
    read.stream()
        .filter(placed -> placed.reading().volts() < LOWEST_ON_24_VOLTS)
        .map(
            placed ->
                placed.remark(
                    placed.cells().voltsColumn(),
                    CurveProblem.BEYOND_SUPPLY,
                    Say.volts(placed.reading().volts())))
        .forEach(questions::add);
    return questions;
  }

  /** A reading and the cells it came from. */
  private record Placed(CurveEntry.Cells cells, CurveReading reading) {
    int sign() {
      return reading.output().amount().signum();
    }

    Remark remark(Remark.Column column, CurveProblem problem, Object... parts) {
      return Remark.at(cells.row(), column, problem, parts);
    }
  }
}
