package loopwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import loopwright.units.Reported;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CellsTest {
  private final Complaints complaints = new Complaints();

  private Table table(String text) {
    return new CsvReader(1)
        .read("f.csv", text.getBytes(StandardCharsets.UTF_8), complaints)
        .orElseThrow();
  }

  private List<String> complained() {
    return complaints.kept().stream().map(Complaint::message).toList();
  }

  @ParameterizedTest(name = "{0} in a file separated by {1}")
  @CsvSource(
      delimiter = '~',
      textBlock =
          """
          0.5 1.0 1.5 ~ ; ~ 3
          0,5 1,0     ~ ; ~ 2
          0.5|1.0     ~ , ~ 2
          4.0         ~ , ~ 1
          1,4         ~ , ~ 0
          0.5 m       ~ ; ~ 0
          0.5;1.0     ~ , ~ 0
          """)
  void readsListsUnlessTheyCouldMeanTwoThings(String cell, String separator, int numbers) {
    Table table = table("lengths_m" + separator + "x\n\"" + cell + "\"" + separator + "1\n");
    List<Reported> read =
        new Cells(table, complaints).quantities(table.rows().get(0), UnitColumn.length("lengths"));
    assertThat(read).hasSize(numbers);
    assertThat(complaints.isEmpty()).isEqualTo(numbers > 0);
  }

  @Test
  void saysWhereAndWhatWouldBeRight() {
    Table table = table("a_ft,kind,name\n5 m,cabel,\n1,cable,abcdef\n");
    Cells cells = new Cells(table, complaints);
    Table.Row first = table.rows().get(0);
    assertThat(cells.quantity(first, UnitColumn.length("a"))).isEmpty();
    assertThat(cells.choice(first, "kind", Map.of("cable", 1, "driver", 2))).isEmpty();
    assertThat(cells.neededText(first, "name", 5)).isEmpty();
    assertThat(cells.text(table.rows().get(1), "name", 5)).isEmpty();
    assertThat(complained())
        .containsExactly(
            "f.csv, row 2, column a_ft: '5 m' is not a number. Write digits with a decimal point or"
                + " comma and no unit; the unit stands in the heading.",
            "f.csv, row 2, column kind: 'cabel' is not one of cable, driver. Did you mean 'cable'?",
            "f.csv, row 2, column name: the cell is empty. It must be filled.",
            "f.csv, row 3, column name: the text has 6 characters; at most 5 are kept. Shorten it.");
    assertThat(complaints.kept().get(0))
        .extracting(Complaint::file, Complaint::row, Complaint::column, Complaint::code)
        .containsExactly("f.csv", 2, "a_ft", "S-112");
  }

  @Test
  void aComplaintAboutAFileHasNoRow() {
    complaints.add(SheetProblem.EMPTY, "f.csv");
    assertThat(complaints.kept().get(0).row()).isZero();
    assertThat(complaints.kept().get(0).column()).isEmpty();
  }

  @Test
  void readsOnPastARowThatIsTooLong() {
    Table table = table("a,b\n1,2,3\n4,5\n6,7,8\n");
    assertThat(table.rows()).hasSize(1);
    assertThat(complained()).hasSize(2).allMatch(message -> message.contains("3 cells"));
  }

  @Test
  void namesEveryWrongHeading() {
    new CsvReader(1).read("f.csv", "a,a,,b\n1".getBytes(StandardCharsets.UTF_8), complaints);
    assertThat(complaints.kept()).extracting(Complaint::code).containsExactly("S-107", "S-111");
  }

  @Test
  void keepsCountingPastWhatItKeeps() {
    for (int i = 0; i < Complaints.MOST_KEPT + 5; i++) {
      complaints.add(SheetProblem.EMPTY, "f.csv");
    }
    assertThat(complaints.kept()).hasSize(Complaints.MOST_KEPT);
    assertThat(complaints.total()).isEqualTo(Complaints.MOST_KEPT + 5);
  }

  @Test
  void putsTextOnOneLine() {
    assertThat(Cells.oneLine("a\r\nb\u0085c\u2028d\u202Ee")).isEqualTo("a b c d e");
  }

  @Test
  void refusesOneQuantityInTwoUnits() {
    Table table = table("a_m,a_ft\n1,2\n");
    UnitColumn.length("a").refuseTwoUnits(table, complaints);
    assertThat(complained())
        .containsExactly(
            "f.csv, row 1: the columns 'a_m' and 'a_ft' give one quantity in two units. Keep one.");
  }
}
