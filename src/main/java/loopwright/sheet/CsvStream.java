package loopwright.sheet;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import java.util.function.Consumer;
import java.util.function.Function;
import loopwright.problem.Refused;
import org.jspecify.annotations.Nullable;

/** The rows of a CSV file one after another; the file is read twice and never held. */
final class CsvStream {
  private final String name;
  private final Consumer<Refused> each;
  private final Function<Table, Consumer<Table.Row>> begin;
  private @Nullable Table head;
  private Consumer<Table.Row> rows = row -> {};
  private long line;

  private CsvStream(
      String name, Consumer<Refused> each, Function<Table, Consumer<Table.Row>> begin) {
    this.name = name;
    this.each = each;
    this.begin = begin;
  }

  /**
   * @param each takes rows and headings that can't be read
   * @param begin is given the table without its rows, and takes them one by one
   * @throws Refused with a {@link SheetProblem} when it can't be read as a table at all
   */
  static void read(
      String name,
      CsvCheck.Source source,
      Consumer<Refused> each,
      Function<Table, Consumer<Table.Row>> begin)
      throws IOException {
    CsvCheck.Found found = CsvCheck.of(name, source);
    CsvStream stream = new CsvStream(name, each, begin);
    try (Reader text = new InputStreamReader(source.open(), StandardCharsets.UTF_8)) {
      for (int i = 0; i < found.skipped(); i++) {
        text.read();
      }
      stream.read(text, found.separator());
    }
    if (stream.head == null) {
      throw new Refused(SheetProblem.EMPTY, name);
    }
  }

  private void read(Reader text, char separator) throws IOException {
    try (CsvReader<CsvRecord> csv =
        CsvReader.builder()
            .fieldSeparator(separator)
            .skipEmptyLines(true)
            .allowMissingFields(true)
            .allowExtraFields(true)
            .ofCsvRecord(text)) {
      Iterator<CsvRecord> records = csv.iterator();
      for (CsvRecord record = next(records); record != null; record = next(records)) {
        line = record.getStartingLineNumber();
        if (RowShape.isFilled(record.getFields())) {
          take(record, separator);
        }
      }
    }
  }

  /** A cell longer than the library's buffer is a pair of quotation marks that slipped in. */
  private @Nullable CsvRecord next(Iterator<CsvRecord> records) {
    try {
      return records.hasNext() ? records.next() : null;
    } catch (CsvParseException tooLong) {
      Refused refused = new Refused(SheetProblem.BROKEN_QUOTES, name, line + 1);
      refused.initCause(tooLong);
      throw refused;
    }
  }

  private void take(CsvRecord record, char separator) {
    if (head == null) {
      head = RowShape.head(name, separator, (int) line, record.getFields(), each);
      rows = begin.apply(head);
      return;
    }
    Table.Row row;
    try {
      row = RowShape.row(head, (int) line, record.getFields());
    } catch (Refused tooLong) {
      each.accept(tooLong);
      return;
    }
    rows.accept(row);
  }
}
