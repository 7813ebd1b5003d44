package loopwright.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScaleTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
      170   | 2330  | 10 | 250 500 750 1000 1250 1500 1750 2000 2250
      6.8   | 93.2  | 10 | 10 20 30 40 50 60 70 80 90
      -18.6 | 0.6   | 6  | -15 -10 -5 0
      7.2   | 8.5   | 5  | 7.5 8.0 8.5
      -0.3  | 0.3   | 5  | -0.2 0.0 0.2
      """)
  void ticksAreRound(double low, double high, int wanted, String ticks) {
    List<BigDecimal> expected = Arrays.stream(ticks.split(" ")).map(BigDecimal::new).toList();
    assertThat(new Scale(low, high, 0, 100).ticks(wanted))
        .usingElementComparator(BigDecimal::compareTo)
        .isEqualTo(expected);
  }

  @Test
  void whatLiesBeyondIsPutOnTheEnd() {
    Scale scale = new Scale(0, 10, 200, 100);
    assertThat(scale.at(5)).isEqualTo(150);
    assertThat(scale.at(11)).isEqualTo(100);
    assertThat(scale.at(-1)).isEqualTo(200);
    assertThat(scale.shows(11)).isFalse();
  }

  @Test
  void anAxisWithoutLengthIsWidenedOrRefused() {
    assertThat(Scale.around(5, 5, 0.1, 0, 1).low()).isLessThan(5);
    assertThat(Scale.around(0, 0, 0.1, 0, 1).high()).isPositive();
    assertThatIllegalArgumentException().isThrownBy(() -> new Scale(1, 1, 0, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> new Scale(Double.NaN, 1, 0, 1));
  }

  @Property
  void ticksAreFewAndInside(
      @ForAll @DoubleRange(min = -1e6, max = 1e6) double low,
      @ForAll @DoubleRange(min = 0.01, max = 1e6) double length) {
    Scale scale = new Scale(low, low + length, 0, 1);
    List<BigDecimal> ticks = scale.ticks(10);
    assertThat(ticks).hasSizeBetween(2, 12);
    assertThat(ticks)
        .allMatch(tick -> tick.doubleValue() >= low - length * 1e-6)
        .allMatch(tick -> tick.doubleValue() <= low + length * (1 + 1e-6));
  }
}
