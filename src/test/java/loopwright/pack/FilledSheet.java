package loopwright.pack;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import loopwright.sheet.XlsxReader;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/** A handed-out workbook as a program fills it in: cells set by loop, line and column. */
final class FilledSheet {
  private final List<Object[]> rows = new ArrayList<>();

  /** A cell that the spreadsheet works out. */
  record Formula(String text) {}

  private FilledSheet() {}

  static FilledSheet of(byte[] workbook) {
    FilledSheet sheet = new FilledSheet();
    for (XlsxReader.Row row : new XlsxReader(20).read("handed-out.xlsx", workbook)) {
      while (sheet.rows.size() < row.line() - 1) {
        sheet.rows.add(new Object[Column.values().length]);
      }
      Object[] cells = new Object[Column.values().length];
      for (Column column : Column.values()) {
        String text = row.cell(column.ordinal()).text();
        cells[column.ordinal()] = text.isEmpty() ? null : text;
      }
      sheet.rows.add(cells);
    }
    return sheet;
  }

  FilledSheet set(String loop, Item item, String of, Column column, Object value) {
    row(loop, item, of)[column.ordinal()] = value;
    return this;
  }

  FilledSheet set(String loop, Item item, Column column, Object value) {
    return set(loop, item, "", column, value);
  }

  /** Line in the file, counted from 1. */
  int line(String loop, Item item, String of) {
    return rows.indexOf(row(loop, item, of)) + 1;
  }

  FilledSheet everywhere(Column column, Object value) {
    rows.subList(1, rows.size()).forEach(row -> row[column.ordinal()] = value);
    return this;
  }

  FilledSheet heading(Column column, String text) {
    rows.get(0)[column.ordinal()] = text;
    return this;
  }

  private Object[] row(String loop, Item item, String of) {
    return rows.stream()
        .filter(row -> loop.equals(row[Column.LOOP.ordinal()]))
        .filter(row -> item.word().equals(row[Column.LINE.ordinal()]))
        .filter(row -> of.equals(row[Column.OF.ordinal()] == null ? "" : row[Column.OF.ordinal()]))
        .findFirst()
        .orElseThrow();
  }

  /** Nine readings of a straight line that begins with so many volts at 250 µm. */
  FilledSheet curve(String loop, Column column, double start, double millivoltsPerMicrometre) {
    for (int gap = 250; gap <= 2250; gap += 250) {
      double volts = start - (gap - 250) * millivoltsPerMicrometre / 1000;
      set(loop, Item.READING, gap + " µm", column, Math.round(volts * 1000) / 1000.0);
    }
    return this;
  }

  /** A good as-found, nothing touched, done. */
  FilledSheet done(String loop) {
    return set(loop, Item.OUTCOME, Column.AS_LEFT, "done")
        .set(loop, Item.NOTHING_TOUCHED, Column.AS_LEFT, "yes")
        .set(loop, Item.DONE_BY, Column.AS_FOUND, "T. Echnician")
        .set(loop, Item.MEASURED_AT, Column.AS_FOUND, "2026-02-28 14:30")
        .set(loop, Item.ZERO, Column.AS_FOUND, "mechanical touch")
        .set(loop, Item.GAP_VOLTAGE, Column.AS_FOUND, -10.02)
        .curve(loop, Column.AS_FOUND, -2.1, 7.874);
  }

  byte[] workbook() {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (Workbook book = new Workbook(bytes, "Filler", "1.0")) {
      Worksheet sheet = book.newWorksheet("Work pack");
      for (int row = 0; row < rows.size(); row++) {
        for (int column = 0; column < rows.get(row).length; column++) {
          write(sheet, row, column, rows.get(row)[column]);
        }
      }
    } catch (IOException ofMemory) {
      throw new UncheckedIOException(ofMemory);
    }
    return bytes.toByteArray();
  }

  private static void write(Worksheet sheet, int row, int column, Object value) {
    if (value instanceof Number number) {
      sheet.value(row, column, number);
    } else if (value instanceof Formula formula) {
      sheet.formula(row, column, formula.text());
    } else if (value instanceof LocalDate day) {
      sheet.value(row, column, day);
      sheet.style(row, column).format("yyyy-mm-dd").set();
    } else if (value != null) {
      sheet.value(row, column, value.toString());
    }
  }

  /** The same as CSV, with that separator and decimal mark. */
  byte[] csv(char separator, char mark) {
    StringBuilder text = new StringBuilder();
    for (Object[] row : rows) {
      text.append(
          Arrays.stream(row)
              .map(cell -> cell == null ? "" : cell.toString())
              .map(cell -> cell.matches("-?\\d+\\.\\d+") ? cell.replace('.', mark) : cell)
              .map(cell -> cell.indexOf(separator) < 0 ? cell : '"' + cell + '"')
              .collect(Collectors.joining(String.valueOf(separator))));
      text.append("\r\n");
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }
}
