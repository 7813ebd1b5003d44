package loopwright.units;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NumbersTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
      4.5     | 4.5
      4,5     | 4.5
      -9,00   | -9.00
      −9.1    | -9.1
      +7      | 7
      ,5      | 0.5
      .5      | 0.5
      1e3     | 1000
      00417   | 417
      -1.9685039370078738 | -1.9685039370078738
      """)
  void readsWhatPeopleType(String text, BigDecimal number) {
    assertThat(Numbers.read(text).orElseThrow()).isEqualByComparingTo(number);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "1.234,5",
        "1,234,5",
        "1 234",
        "4.5m",
        "NaN",
        "Infinity",
        "0x10",
        "--1",
        "four",
        "1e",
        "=1+1",
        "9999999999999999"
      })
  void refusesWhatCouldMeanTwoThings(String text) {
    assertThat(Numbers.read(text)).isEmpty();
  }
}
