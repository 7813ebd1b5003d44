package loopwright.gapround;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import loopwright.cause.TappingPoint;
import loopwright.fieldcheck.MachineState;
import loopwright.fieldcheck.Warmth;
import loopwright.sheet.Cells;
import loopwright.sheet.Complaints;
import loopwright.sheet.Headings;
import loopwright.sheet.Table;
import loopwright.sheet.TableStream;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.Unit;

/** Reads the file of a gap round. Tags are not looked up here, nor moments put on a clock. */
final class RoundFile {
  static final List<String> NEEDED = List.of("tag", "volts", "time", "machine_state");
  static final List<String> KNOWN =
      List.of("tag", "volts", "time", "machine_state", "measured_at", "warmth", "note");

  /** 100,000 rows have about 6 MB, as a workbook 3 MB. */
  private static final int MOST_MEGABYTES = 50;

  private static final int MOST_ROWS = 300_000;

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
  private final Map<UUID, Integer> seen = new HashMap<>();

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
   * @param row its number in the file
   * @param time as written
   */
  record Line(
      int row,
      String tag,
      Reported volts,
      String time,
      MachineState state,
      TappingPoint tap,
      Warmth warmth,
      String note) {}

  /**
   * Reads the rows one by one, so that a file of a whole large plant is never held.
   *
   * @param usual where a row was taken that doesn't say
   * @param complaints takes all that is wrong
   * @param lines takes the rows that can be read
   */
  static void read(
      String name, Path file, TappingPoint usual, Complaints complaints, Consumer<Line> lines) {
    new TableStream(MOST_MEGABYTES, MOST_ROWS)
        .read(name, file, complaints, head -> rows(head, complaints, usual, lines));
  }

  private static Consumer<Table.Row> rows(
      Table head, Complaints complaints, TappingPoint usual, Consumer<Line> lines) {
    Headings.unknown(head, KNOWN).forEach(complaints::add);
    Headings.missing(head, NEEDED).forEach(complaints::add);
    RoundFile file = new RoundFile(head, complaints, usual);
    return complaints.isEmpty() ? row -> file.take(row, lines) : row -> {};
  }

  private void take(Table.Row row, Consumer<Line> lines) {
    Optional<Line> line = line(row);
    if (line.isEmpty()) {
      return;
    }
    Integer before = seen.putIfAbsent(same(line.get()), row.line());
    if (before != null) {
      cells.complain(row, "tag", RoundProblem.TWICE, line.get().tag(), before);
    }
    lines.accept(line.get());
  }

  /** What makes two rows one, in 16 bytes instead of its text: no two of a file agree by chance. */
  private static UUID same(Line line) {
    String text = line.tag() + '\n' + line.time() + '\n' + line.state().word();
    return UUID.nameUUIDFromBytes(text.getBytes(StandardCharsets.UTF_8));
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
            new Line(
                row.line(), tag.get(), volts.get(), time.get(), state.get(), tap, warmth, note))
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
