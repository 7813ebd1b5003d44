package loopwright.gapround;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import loopwright.cause.TappingPoint;
import loopwright.fieldcheck.MachineState;
import loopwright.fieldcheck.Warmth;
import loopwright.sheet.Cells;
import loopwright.sheet.Complaints;
import loopwright.sheet.CsvReader;
import loopwright.sheet.Headings;
import loopwright.sheet.Table;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.Unit;

/** Reads the file of a gap round. Tags are not looked up here, nor moments put on a clock. */
final class RoundFile {
  static final List<String> NEEDED = List.of("tag", "volts", "time", "machine_state");
  static final List<String> KNOWN =
      List.of("tag", "volts", "time", "machine_state", "measured_at", "warmth", "note");

  /** 100,000 rows have about 6 MB. */
  private static final int MOST_MEGABYTES = 50;

  private static final int LONGEST_TAG = 60;
  private static final int LONGEST_NOTE = 2000;
  private static final Map<String, MachineState> STATES =
      byWord(MachineState.values(), MachineState::word);
  private static final Map<String, TappingPoint> PLACES =
      byWord(TappingPoint.values(), TappingPoint::label);
  private static final Map<String, Warmth> WARMTHS = byWord(Warmth.values(), Warmth::word);

  private final Table table;
  private final Cells cells;
  private final Complaints complaints;
  private final TappingPoint usual;

  private RoundFile(Table table, Complaints complaints, TappingPoint usual) {
    this.table = table;
    this.cells = new Cells(table, complaints);
    this.complaints = complaints;
    this.usual = usual;
  }

  private static <T> Map<String, T> byWord(T[] values, Function<T, String> word) {
    return Arrays.stream(values).collect(Collectors.toMap(word, each -> each));
  }

  /**
   * One row.
   *
   * @param time as written
   */
  record Line(
      Table.Row row,
      String tag,
      Reported volts,
      String time,
      MachineState state,
      TappingPoint tap,
      Warmth warmth,
      String note) {}

  /**
   * @param usual where a row was taken that doesn't say
   * @param complaints takes all that is wrong
   */
  static List<Line> read(String name, byte[] bytes, TappingPoint usual, Complaints complaints) {
    Optional<Table> table = new CsvReader(MOST_MEGABYTES).read(name, bytes, complaints);
    if (table.isEmpty()) {
      return List.of();
    }
    Headings.unknown(table.get(), KNOWN).forEach(complaints::add);
    Headings.missing(table.get(), NEEDED).forEach(complaints::add);
    return complaints.isEmpty() ? new RoundFile(table.get(), complaints, usual).lines() : List.of();
  }

  private List<Line> lines() {
    List<Line> lines = new ArrayList<>(table.rows().size());
    Map<List<String>, Integer> seen = new HashMap<>();
    for (Table.Row row : table.rows()) {
      line(row)
          .ifPresent(
              line -> {
                Integer before =
                    seen.putIfAbsent(
                        List.of(line.tag(), line.time(), line.state().word()), row.line());
                if (before != null) {
                  cells.complain(row, "tag", RoundProblem.TWICE, line.tag(), before);
                }
                lines.add(line);
              });
    }
    return lines;
  }

  private Optional<Line> line(Table.Row row) {
    Optional<String> tag = cells.neededText(row, "tag", LONGEST_TAG);
    Optional<Reported> volts = volts(row);
    Optional<String> time = cells.neededText(row, "time", LONGEST_TAG);
    if (table.cell(row, "machine_state").isEmpty()) {
      cells.complain(row, "machine_state", RoundProblem.NO_STATE);
    }
    Optional<MachineState> state = cells.choice(row, "machine_state", STATES);
    int before = complaints.total();
    TappingPoint tap = cells.choice(row, "measured_at", PLACES).orElse(usual);
    Warmth warmth = cells.choice(row, "warmth", WARMTHS).orElse(Warmth.NOT_RECORDED);
    String note = cells.text(row, "note", LONGEST_NOTE).orElse("");
    return tag.isPresent()
            && volts.isPresent()
            && time.isPresent()
            && state.isPresent()
            && before == complaints.total()
        ? Optional.of(
            new Line(row, tag.get(), volts.get(), time.get(), state.get(), tap, warmth, note))
        : Optional.empty();
  }

  private Optional<Reported> volts(Table.Row row) {
    Optional<String> typed = cells.neededText(row, "volts", 30);
    Optional<Reported> volts = typed.flatMap(text -> Reported.read(text, Unit.VOLT));
    if (typed.isPresent() && Numbers.read(typed.get()).isEmpty()) {
      cells.complain(
          row, "volts", RoundProblem.NOT_VOLTS, "“" + typed.get() + "” is not a number.");
    }
    return volts;
  }
}
