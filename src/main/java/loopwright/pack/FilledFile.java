package loopwright.pack;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import loopwright.problem.Refused;
import loopwright.sheet.Complaints;
import loopwright.sheet.CsvReader;
import loopwright.sheet.CsvText;
import loopwright.sheet.Table;
import loopwright.sheet.XlsxReader;

/**
 * A sheet that came back, whatever kind of file it is: its rows as they stand, with what kind of
 * thing stands in each cell where the file can say so.
 *
 * @param name shown in messages
 * @param typed whether the file tells numbers from texts; a CSV doesn't
 */
record FilledFile(String name, boolean typed, List<Row> rows) {
  private static final int MOST_MEGABYTES = 20;

  FilledFile {
    rows = List.copyOf(rows);
  }

  /** A row below the headings. */
  record Row(int line, Map<Column, XlsxReader.Cell> cells) {
    Row {
      cells = Map.copyOf(cells);
    }

    XlsxReader.Cell cell(Column column) {
      return cells.getOrDefault(column, XlsxReader.Cell.EMPTY);
    }

    String text(Column column) {
      return cell(column).text();
    }
  }

  /**
   * Reads it.
   *
   * @param complaints takes what is wrong with the file as a whole; then there are no rows
   */
  static FilledFile read(String name, byte[] bytes, Complaints complaints) {
    return XlsxReader.looksLikeOne(bytes)
        ? workbook(name, bytes, complaints)
        : csv(name, bytes, complaints);
  }

  private static FilledFile workbook(String name, byte[] bytes, Complaints complaints) {
    List<XlsxReader.Row> rows;
    try {
      rows = new XlsxReader(MOST_MEGABYTES).read(name, bytes);
    } catch (Refused refused) {
      complaints.add(refused);
      return new FilledFile(name, true, List.of());
    }
    if (rows.isEmpty()) {
      complaints.add(PackProblem.NOT_FILLED, name);
      return new FilledFile(name, true, List.of());
    }
    XlsxReader.Row first = rows.get(0);
    List<String> headings = new ArrayList<>();
    for (Column column : Column.values()) {
      headings.add(first.cell(column.ordinal()).text());
    }
    if (!headingsStand(name, first.line(), headings, complaints)) {
      return new FilledFile(name, true, List.of());
    }
    return new FilledFile(
        name, true, rows.subList(1, rows.size()).stream().map(FilledFile::row).toList());
  }

  private static Row row(XlsxReader.Row row) {
    Map<Column, XlsxReader.Cell> cells = new EnumMap<>(Column.class);
    for (Column column : Column.values()) {
      cells.put(column, row.cell(column.ordinal()));
    }
    return new Row(row.line(), cells);
  }

  private static FilledFile csv(String name, byte[] bytes, Complaints complaints) {
    int before = complaints.total();
    Optional<Table> table = new CsvReader(MOST_MEGABYTES).read(name, bytes, complaints);
    if (table.isEmpty()
        || complaints.total() > before
        || !headingsStand(
            name, table.get().headingLine(), padded(table.get().headings()), complaints)) {
      return new FilledFile(name, false, List.of());
    }
    List<Row> rows =
        table.get().rows().stream()
            .map(
                row -> {
                  Map<Column, XlsxReader.Cell> cells = new EnumMap<>(Column.class);
                  for (Column column : Column.values()) {
                    String text = table.get().cell(row, column.heading());
                    cells.put(column, XlsxReader.Cell.ofText(unguarded(text)));
                  }
                  return new Row(row.line(), cells);
                })
            .toList();
    return new FilledFile(name, false, rows);
  }

  private static List<String> padded(List<String> headings) {
    List<String> padded = new ArrayList<>(headings);
    while (padded.size() < Column.values().length) {
      padded.add("");
    }
    return padded;
  }

  /** The apostrophe that {@link CsvText} puts before what looks like a formula. */
  private static String unguarded(String text) {
    return text.matches("'[=+@-].*") ? text.substring(1) : text;
  }

  private static boolean headingsStand(
      String name, int line, List<String> found, Complaints complaints) {
    List<String> wanted = Column.headings();
    List<String> plain = found.stream().map(h -> h.strip().toLowerCase(Locale.ROOT)).toList();
    if (plain.equals(wanted)) {
      return true;
    }
    List<String> missing = wanted.stream().filter(h -> !plain.contains(h)).toList();
    if (missing.size() > wanted.size() / 2) {
      complaints.add(PackProblem.NO_HEADINGS, name, String.join(", ", missing));
      return false;
    }
    for (int i = 0; i < wanted.size(); i++) {
      if (!plain.get(i).equals(wanted.get(i))) {
        complaints.add(
            PackProblem.EDITED_HEADING, name, line, place(i), found.get(i), wanted.get(i));
      }
    }
    return false;
  }

  /** A column as spreadsheets call it: A, B … */
  static String place(int column) {
    return Character.toString('A' + column);
  }
}
