package loopwright.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import loopwright.problem.Refused;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CsvReaderTest {
  private final CsvReader reader = new CsvReader(1);

  private Table read(String text) {
    return reader.read("file.csv", text.getBytes(StandardCharsets.UTF_8));
  }

  @ParameterizedTest
  @ValueSource(strings = {",", ";", "\t"})
  void findsTheSeparator(String separator) {
    Table table =
        read(
            "\uFEFFTag{}Length_m\r\nV-1{}4,5\r\n"
                .replace("{}", separator)
                .replace("4,5", separator.equals(",") ? "\"4,5\"" : "4,5"));
    assertThat(table.headings()).containsExactly("tag", "length_m");
    assertThat(table.rows()).containsExactly(new Table.Row(2, List.of("V-1", "4,5")));
  }

  @Test
  void passesOverBlankLinesAndTrailingEmptyColumnsAndKeepsLineNumbers() {
    Table table = read("a,b,,\n\n1,\"two\nlines\",,\n , ,\n2\n");
    assertThat(table.rows())
        .containsExactly(
            new Table.Row(3, List.of("1", "two\nlines")), new Table.Row(6, List.of("2", "")));
  }

  @Test
  void refusesTwoUnclosedOrExtraThings() {
    assertProblem("a,a\n1,2", SheetProblem.REPEATED_HEADING);
    assertProblem("a,,b\n1,2,3", SheetProblem.BLANK_HEADING);
    assertProblem("a,b\n1,2,3", SheetProblem.TOO_MANY_CELLS);
    assertProblem("a,b\n1,\"2\n", SheetProblem.BROKEN_QUOTES);
    assertProblem("", SheetProblem.EMPTY);
    assertProblem(" \n\n", SheetProblem.EMPTY);
    assertProblem("a\n" + "x".repeat(1_000_001), SheetProblem.TOO_LARGE);
    assertProblem("PK\u0003\u0004\u0000", SheetProblem.NOT_TEXT);
  }

  @Test
  void namesTheLineThatIsNotUtf8() {
    byte[] latin1 = "a\nb\nü\n".getBytes(StandardCharsets.ISO_8859_1);
    assertThatThrownBy(() -> reader.read("f.csv", latin1))
        .isInstanceOf(Refused.class)
        .hasMessageContaining("line 3")
        .hasMessageContaining("UTF-8");
  }

  @Test
  void namesTheNearestHeading() {
    Table table = read("tag,probe_lenght_m\nx,1");
    assertThatThrownBy(() -> Headings.refuseUnknown(table, List.of("tag", "probe_length_m")))
        .hasMessageContaining("column 2")
        .hasMessageContaining("'probe_length_m'");
  }

  private void assertProblem(String text, SheetProblem problem) {
    assertThatThrownBy(() -> read(text))
        .isInstanceOfSatisfying(
            Refused.class, refused -> assertThat(refused.problem()).isEqualTo(problem));
  }
}
