package loopwright.pack;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.curve.CurveEntry;
import loopwright.curve.Remark;
import loopwright.curve.Run;
import loopwright.problem.Problem;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.sheet.Complaints;
import loopwright.sheet.XlsxReader;
import loopwright.time.SiteMoment;
import loopwright.units.Numbers;

/**
 * What somebody filled in for one loop, cell by cell; what can't be taken is complained of at its
 * cell and reads as empty.
 */
final class FilledLoop {
  private final String file;
  private final boolean typed;
  private final LoopSheet sheet;
  private final List<FilledFile.Row> rows;
  private final Complaints complaints;
  private final Map<String, FilledFile.Row> byLine = new HashMap<>();
  private final Set<Place> told = new HashSet<>();

  /**
   * @param rows of that loop, in the order of the file
   */
  FilledLoop(FilledFile file, LoopSheet sheet, List<FilledFile.Row> rows, Complaints complaints) {
    this.file = file.name();
    this.typed = file.typed();
    this.sheet = sheet;
    this.rows = rows;
    this.complaints = complaints;
    place();
  }

  private static String key(String line, String of) {
    return line.strip().toLowerCase(Locale.ROOT) + "|" + of.strip().toLowerCase(Locale.ROOT);
  }

  private void place() {
    Set<String> known = new HashSet<>();
    PackTable.lines(sheet).forEach(line -> known.add(key(line.item().word(), line.of())));
    for (FilledFile.Row row : rows) {
      String key = key(row.text(Column.LINE), row.text(Column.OF));
      String told = (row.text(Column.LINE) + " " + row.text(Column.OF)).strip();
      if (!known.contains(key)) {
        complain(row, Column.LINE, PackProblem.UNKNOWN_ITEM, told, sheet.tag());
      } else if (byLine.putIfAbsent(key, row) != null) {
        complain(row, Column.LINE, PackProblem.TWICE, told, sheet.tag());
      }
    }
    for (PackTable.Line line : PackTable.lines(sheet)) {
      FilledFile.Row row = byLine.get(key(line.item().word(), line.of()));
      if (row != null) {
        Column.TYPED.stream()
            .filter(column -> !line.item().takes(column))
            .filter(column -> row.cell(column).kind() != XlsxReader.Kind.EMPTY)
            .forEach(
                column ->
                    complain(row, column, PackProblem.NO_ENTRY_HERE, row.cell(column).text()));
      }
    }
  }

  LoopSheet sheet() {
    return sheet;
  }

  /** Nothing is filled in anywhere. */
  boolean isBlank() {
    return rows.stream()
        .allMatch(
            row ->
                Column.TYPED.stream()
                    .allMatch(column -> row.cell(column).kind() == XlsxReader.Kind.EMPTY));
  }

  /** SHA-256 of everything filled in: the same again gives the same. */
  String hash() {
    StringBuilder all = new StringBuilder(sheet.tag());
    for (PackTable.Line line : PackTable.lines(sheet)) {
      FilledFile.Row row = byLine.get(key(line.item().word(), line.of()));
      for (Column column : Column.TYPED) {
        String text = row == null ? "" : row.text(column);
        if (!text.isEmpty()) {
          all.append('\n').append(key(line.item().word(), line.of())).append('|');
          all.append(column.heading()).append('|');
          all.append(Numbers.read(text).map(Numbers::plain).orElse(text));
        }
      }
    }
    return Frozen.hash(all.toString());
  }

  /** Where something missing is to be told. */
  Place place(Item item, String of, Column column) {
    FilledFile.Row row = byLine.get(key(item.word(), of));
    return new Place(row == null ? rows.get(0).line() : row.line(), column);
  }

  /** A cell of the file. */
  record Place(int line, Column column) {}

  /** Of each cell the first complaint is told. */
  void complain(Place place, Problem problem, Object... parts) {
    if (!told.add(place)) {
      return;
    }
    Object[] all = new Object[parts.length + 3];
    all[0] = file;
    all[1] = place.line();
    all[2] = FilledFile.place(place.column().ordinal());
    System.arraycopy(parts, 0, all, 3, parts.length);
    complaints.add(problem, all);
  }

  private void complain(FilledFile.Row row, Column column, Problem problem, Object... parts) {
    complain(new Place(row.line(), column), problem, parts);
  }

  /**
   * A text, or one of the line's words in small letters; empty when nothing usable stands there.
   */
  String text(Item item, String of, Column column) {
    FilledFile.Row row = byLine.get(key(item.word(), of));
    if (row == null) {
      return "";
    }
    XlsxReader.Cell cell = row.cell(column);
    return switch (cell.kind()) {
      case EMPTY -> "";
      case FORMULA -> refused(row, column, PackProblem.FORMULA);
      case OTHER -> refused(row, column, PackProblem.NOT_READABLE, cell.text());
      case DATE -> refused(row, column, PackProblem.NOT_READABLE, cell.text());
      default -> word(item, row, column, cell.text());
    };
  }

  private String word(Item item, FilledFile.Row row, Column column, String text) {
    if (item.choices().isEmpty()) {
      return kept(item, row, column, text);
    }
    String word = text.toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
    return item.choices().contains(word)
        ? word
        : refused(row, column, PackProblem.NOT_A_WORD, text, String.join(", ", item.choices()));
  }

  /** Too long a text is complained of, never cut. */
  private String kept(Item item, FilledFile.Row row, Column column, String text) {
    try {
      return Text.kept("this", text, item.mostCharacters());
    } catch (Refused unfit) {
      return refused(row, column, PackProblem.READING, unfit.getMessage());
    }
  }

  private String refused(FilledFile.Row row, Column column, Problem problem, Object... parts) {
    complain(row, column, problem, parts);
    return "";
  }

  /** A number as typed; empty when there is none. */
  String number(Item item, String of, Column column) {
    FilledFile.Row row = byLine.get(key(item.word(), of));
    if (row == null) {
      return "";
    }
    XlsxReader.Cell cell = row.cell(column);
    return switch (cell.kind()) {
      case EMPTY -> "";
      case NUMBER -> cell.text();
      case FORMULA -> refused(row, column, PackProblem.FORMULA);
      case DATE -> refused(row, column, PackProblem.DATE_FOR_NUMBER, cell.text());
      case OTHER -> refused(row, column, PackProblem.NOT_READABLE, cell.text());
      case TEXT ->
          !typed && Numbers.read(cell.text()).isPresent()
              ? cell.text()
              : refused(row, column, PackProblem.TEXT_FOR_NUMBER, cell.text());
    };
  }

  /** A moment on the site's clock; a bare day means its start. */
  Optional<Instant> moment(Item item, String of, Column column, ZoneId zone) {
    FilledFile.Row row = byLine.get(key(item.word(), of));
    if (row == null || row.cell(column).kind() == XlsxReader.Kind.EMPTY) {
      return Optional.empty();
    }
    XlsxReader.Cell cell = row.cell(column);
    if (cell.kind() == XlsxReader.Kind.FORMULA) {
      complain(row, column, PackProblem.FORMULA);
      return Optional.empty();
    }
    String[] halves = cell.text().strip().split("[ T]+", 2);
    Optional<LocalDate> day = day(halves[0]);
    if (day.isEmpty()) {
      complain(row, column, PackProblem.LOCAL_DATE, cell.text());
      return Optional.empty();
    }
    try {
      return Optional.of(
          halves.length == 1
              ? SiteMoment.startOf(day.get(), zone)
              : SiteMoment.of(day.get(), SiteMoment.time(halves[1]), zone));
    } catch (IllegalArgumentException noSuchTime) {
      complain(
          row, column, PackProblem.READING, "'" + cell.text() + "': " + noSuchTime.getMessage());
      return Optional.empty();
    }
  }

  private static Optional<LocalDate> day(String typed) {
    try {
      return Optional.of(SiteMoment.day(typed));
    } catch (IllegalArgumentException local) {
      return Optional.empty();
    }
  }

  /** Readings of one stage, up and down, with the rows they came from. */
  List<CurveEntry.Cells> readings(Column up, Column down) {
    LoopSheet.Limits limits = sheet.limits();
    List<CurveEntry.Cells> cells = new ArrayList<>();
    if (limits == null) {
      return cells;
    }
    for (Column column : List.of(up, down)) {
      for (LoopSheet.Reading reading : limits.readings()) {
        String of = reading.gap() + " " + limits.unit();
        String volts = number(Item.READING, of, column);
        if (!volts.isEmpty()) {
          int line = place(Item.READING, of, column).line();
          boolean isDown = column == down;
          cells.add(
              new CurveEntry.Cells(
                  line,
                  reading.gap(),
                  volts,
                  (isDown ? Run.DOWN : Run.UP).label(),
                  isDown ? Remark.Column.DOWN_VOLTS : Remark.Column.VOLTS));
        }
      }
    }
    return cells;
  }
}
