package loopwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Streaming gives the very rows and complaints that reading a file whole gives. */
class TableStreamTest {
  private static final int MOST_ROWS = 20;

  @TempDir static Path folder;

  private final Complaints complaints = new Complaints();

  private static Path file(String text) throws IOException {
    return Files.writeString(Files.createTempFile(folder, "t", ".csv"), text);
  }

  private List<Table.Row> rows(Path file) {
    List<Table.Row> rows = new ArrayList<>();
    new TableStream(1, MOST_ROWS).read("t.csv", file, complaints, head -> rows::add);
    return rows;
  }

  private List<String> said() {
    return complaints.kept().stream().map(Complaint::message).toList();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "a,b\n1,2\n3,4\n",
        "\uFEFFsep=;\r\na;b\r\n1,5;2\r\n",
        "\n\n a ;b\n\"x\n\"\"y\"\";\";2;\n ; \n5\n",
        "a\tb\n1\t2\t3\n4\n",
        "a,a,b\n1,2,3\n",
        "a,,b\n1,2,3\n",
        "a,b\n1,\"2\n3,4\n",
        "a,b\n1,2\u0007\n",
        " \n\n",
        "a,b"
      })
  void theSameAsReadWhole(String text) throws IOException {
    Complaints whole = new Complaints();
    List<Table.Row> expected =
        new CsvReader(1)
            .read("t.csv", text.getBytes(StandardCharsets.UTF_8), whole)
            .map(Table::rows)
            .orElse(List.of());
    assertThat(rows(file(text))).isEqualTo(expected);
    assertThat(said()).isEqualTo(whole.kept().stream().map(Complaint::message).toList());
    assertThat(expected.isEmpty() ? said().isEmpty() && !text.equals("a,b") : false).isFalse();
  }

  /** A letter of two bytes and a doubled quotation mark across the edge of a buffer. */
  @Test
  void nothingBreaksAtTheEdgeOfABuffer() throws IOException {
    for (int length = 8_185; length < 8_195; length++) {
      String cell = "x".repeat(length) + "ü\"\"ß";
      assertThat(rows(file("a,b\n\"" + cell + "\",2\n")).get(0).cells())
          .containsExactly(cell.replace("\"\"", "\""), "2");
    }
    assertThat(said()).isEmpty();
    Path latin = Files.createTempFile(folder, "l", ".csv");
    Files.write(latin, ("a\n" + "x\n".repeat(9) + "ü").getBytes(StandardCharsets.ISO_8859_1));
    assertThat(rows(latin)).isEmpty();
    assertThat(said().get(0)).contains("line 11", "UTF-8");
  }

  @Test
  void aFileThatIsTooLongIsRefusedNotCut() throws IOException {
    rows(file("a\n" + "1\n".repeat(MOST_ROWS)));
    assertThat(said()).isEmpty();
    rows(file("a\n" + "1\n".repeat(MOST_ROWS + 1)));
    assertThat(said().get(0)).contains("more than 20 rows");
    rows(file("a\n" + "x".repeat(1_000_001)));
    assertThat(said().get(1)).contains("at most 1 MB");
  }

  private static Path workbook(int rows) throws IOException {
    Path file = Files.createTempFile(folder, "w", ".xlsx");
    try (OutputStream out = Files.newOutputStream(file);
        Workbook book = new Workbook(out, "test", "1.0")) {
      Worksheet sheet = book.newWorksheet("one");
      sheet.value(1, 0, "A");
      sheet.value(1, 1, "b ");
      for (int i = 0; i < rows; i++) {
        sheet.value(2 + 2 * i, 0, 1.5 + i);
        sheet.value(2 + 2 * i, 1, " text ");
      }
      sheet.value(2, 2, rows == 2 ? "beside" : "");
    }
    return file;
  }

  @Test
  void aWorkbookGivesTheSameKindOfRows() throws IOException {
    assertThat(rows(workbook(3)))
        .containsExactly(
            new Table.Row(3, List.of("1.5", "text")),
            new Table.Row(5, List.of("2.5", "text")),
            new Table.Row(7, List.of("3.5", "text")));
    assertThat(said()).isEmpty();
    rows(workbook(2));
    assertThat(said().get(0)).contains("row 3: the row has 3 cells");
    rows(workbook(MOST_ROWS));
    assertThat(complaints.total()).isEqualTo(1);
    rows(workbook(MOST_ROWS + 1));
    assertThat(said().get(1)).contains("more than");
  }
}
