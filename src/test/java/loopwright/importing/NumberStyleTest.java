package loopwright.importing;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import loopwright.problem.Problem;
import loopwright.sheet.CsvReader;
import loopwright.sheet.Table;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Common practice of spreadsheets, no source: what goes with which separator. */
class NumberStyleTest {

  @ParameterizedTest(name = "{0}: {2} in a column {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # separator | column            | cell    | becomes
          ,           | 4.5               | 4.5     | 4.5
          ,           | 4.5 250           | 1.250   | 1.250
          ,           | 250               | 1.250   | 1.250
          ,           | "4,5"             | 1,250   | 1.250
          ,           | 250               | 1,250   | I-105
          ;           | 4,5               | 1,250   | 1.250
          ;           | 250               | 1,250   | 1.250
          ;           | 250               | 1.250   | I-105
          ;           | 4.5               | 1.250   | 1.250
          ;           | 4.5               | 1,250   | I-106
          ;           | 4,5 0,5 0,7       | 4.5     | I-106
          ;           | 0,250             | 1,250   | 1.250
          tab         | 250               | 1.250   | I-105
          tab         | 250               | 1,250   | I-105
          tab         | 4,5               | 1,250   | 1.250
          ,           | 4.5               | 1.234.5 | I-103
          ,           | 4.5               | 1,234.5 | I-104
          ,           | 4.5               | −9.87   | -9.87
          ,           | 4.5               | 1 000   | I-103
          ,           | 4.5               | 1'000   | I-103
          ,           | 4.5               | 1e3     | 1000
          ,           | 4.5               | .5      | 0.5
          ,           | 4.5               | -       | I-103
          """)
  void readsOrSaysWhyNot(String separator, String column, String cell, String becomes) {
    NumberStyle style =
        NumberStyle.of(table(separator, column, cell), List.of("x"), Optional.empty());
    NumberStyle.Reading reading = style.read(cell);
    if (becomes.startsWith("I-")) {
      assertThat(reading.wrong().map(NumberStyle.Wrong::problem).map(Problem::code))
          .contains(becomes);
    } else {
      assertThat(reading.number().orElseThrow()).isEqualByComparingTo(becomes);
    }
  }

  private static Table table(String separator, String column, String cell) {
    String between = separator.equals("tab") ? "\t" : separator;
    StringBuilder text = new StringBuilder("x" + between + "y\n");
    String plain = column.replace("\"", "");
    Arrays.stream((plain + " ").split(" "))
        .forEach(number -> text.append(quoted(number)).append(between).append("a\n"));
    text.append(quoted(cell)).append(between).append("a\n");
    return new CsvReader(1).read("x.csv", text.toString().getBytes(StandardCharsets.UTF_8));
  }

  private static String quoted(String cell) {
    return "\"" + cell + "\"";
  }
}
