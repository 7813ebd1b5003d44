package loopwright.demo;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import loopwright.sheet.CsvReader;
import loopwright.sheet.Table;

/** A demo file with every date moved by whole days; times of day stay. */
final class ShiftedDates {
  private static final int MOST_MEGABYTES = 10;
  private static final int DATE_LENGTH = "2026-06-30".length();
  private static final Set<String> DATES =
      Set.of("since", "from", "until", "measured_at", "settings_from", "due_on");

  private ShiftedDates() {}

  static byte[] of(String name, byte[] file, long days) {
    Table table = new CsvReader(MOST_MEGABYTES).read(name, file);
    StringWriter out = new StringWriter();
    try (CsvWriter csv = CsvWriter.builder().build(out)) {
      csv.writeRecord(table.headings());
      for (Table.Row row : table.rows()) {
        csv.writeRecord(shifted(table.headings(), row.cells(), days));
      }
    } catch (IOException cannotHappen) {
      throw new UncheckedIOException(cannotHappen);
    }
    return out.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static List<String> shifted(List<String> headings, List<String> cells, long days) {
    List<String> shifted = new ArrayList<>(cells);
    for (int i = 0; i < cells.size(); i++) {
      if (DATES.contains(headings.get(i)) && !cells.get(i).isEmpty()) {
        shifted.set(i, shifted(cells.get(i), days));
      }
    }
    return shifted;
  }

  private static String shifted(String moment, long days) {
    LocalDate day = LocalDate.parse(moment.substring(0, DATE_LENGTH));
    return day.plusDays(days) + moment.substring(DATE_LENGTH);
  }
}
