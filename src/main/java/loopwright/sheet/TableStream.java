package loopwright.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import loopwright.problem.Refused;
import org.jspecify.annotations.Nullable;

/**
 * The rows of a table one after another, from a CSV file or the first sheet of a workbook, so that
 * a long one never has to be held. What kind of file it is its first bytes say, whatever it is
 * called.
 */
public final class TableStream {
  private static final int MEGABYTE = 1_000_000;

  private final int mostMegabytes;
  private final int mostRows;

  /**
   * @param mostMegabytes size above which a file is refused unread
   * @param mostRows filled rows above which it is refused
   */
  public TableStream(int mostMegabytes, int mostRows) {
    this.mostMegabytes = mostMegabytes;
    this.mostRows = mostRows;
  }

  /**
   * Reads on past rows that can't be read, so that everything wrong is found at once.
   *
   * @param name shown in messages
   * @param complaints takes all that is wrong
   * @param begin is given the headings, as a table without rows, and takes the rows one by one
   */
  public void read(
      String name, Path file, Complaints complaints, Function<Table, Consumer<Table.Row>> begin) {
    try {
      if (looksLikeWorkbook(file)) {
        new Workbook(name, complaints, begin).read(file);
      } else {
        csv(name, file, complaints, begin);
      }
    } catch (Refused refused) {
      complaints.add(refused);
    } catch (IOException unreadable) {
      complaints.add(SheetProblem.NO_FILE, name);
    }
  }

  private static boolean looksLikeWorkbook(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return XlsxReader.looksLikeOne(in.readNBytes(4));
    }
  }

  private void csv(
      String name, Path file, Complaints complaints, Function<Table, Consumer<Table.Row>> begin)
      throws IOException {
    long size = Files.size(file);
    if (size > (long) mostMegabytes * MEGABYTE) {
      throw new Refused(
          SheetProblem.TOO_LARGE, name, (size + MEGABYTE - 1) / MEGABYTE, mostMegabytes);
    }
    CsvStream.read(
        name,
        () -> Files.newInputStream(file),
        complaints::add,
        head -> counted(name, begin.apply(head)));
  }

  private Consumer<Table.Row> counted(String name, Consumer<Table.Row> rows) {
    int[] count = new int[1];
    return row -> {
      count[0]++;
      if (count[0] > mostRows) {
        throw new Refused(SheetProblem.TOO_MANY_ROWS, name, mostRows);
      }
      rows.accept(row);
    };
  }

  /** The first sheet of a workbook as a table: cells become the texts that a CSV would hold. */
  private final class Workbook {
    /** Never a decimal mark, so that numbers between commas aren't doubted. */
    private static final char SEPARATOR = '\t';

    private final String name;
    private final Complaints complaints;
    private final Function<Table, Consumer<Table.Row>> begin;
    private @Nullable Table head;
    private Consumer<Table.Row> rows = row -> {};

    Workbook(String name, Complaints complaints, Function<Table, Consumer<Table.Row>> begin) {
      this.name = name;
      this.complaints = complaints;
      this.begin = begin;
    }

    void read(Path file) throws IOException {
      new XlsxReader(mostMegabytes).read(name, file, mostRows + 1, this::take);
      if (head == null) {
        throw new Refused(SheetProblem.EMPTY, name);
      }
    }

    private void take(XlsxReader.Row row) {
      if (head == null) {
        head = RowShape.head(name, SEPARATOR, row.line(), texts(row), complaints::add);
        rows = begin.apply(head);
        return;
      }
      if (!isReadable(head, row)) {
        return;
      }
      Table.Row shaped;
      try {
        shaped = RowShape.row(head, row.line(), texts(row));
      } catch (Refused tooLong) {
        complaints.add(tooLong);
        return;
      }
      rows.accept(shaped);
    }

    private static List<String> texts(XlsxReader.Row row) {
      int last = row.cells().keySet().stream().mapToInt(Integer::intValue).max().orElse(-1);
      List<String> texts = new ArrayList<>();
      for (int column = 0; column <= last; column++) {
        texts.add(row.cell(column).text());
      }
      return texts;
    }

    private boolean isReadable(Table table, XlsxReader.Row row) {
      int before = complaints.total();
      for (int column = 0; column < table.headings().size(); column++) {
        XlsxReader.Cell cell = row.cell(column);
        String heading = table.headings().get(column);
        if (cell.kind() == XlsxReader.Kind.FORMULA) {
          complaints.add(SheetProblem.FORMULA, name, row.line(), heading);
        } else if (cell.kind() == XlsxReader.Kind.OTHER) {
          complaints.add(SheetProblem.NO_VALUE, name, row.line(), heading, cell.text());
        }
      }
      return complaints.total() == before;
    }
  }
}
