package loopwright.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class StraightLineTest {
  private static final double[] X = {1, 2, 4, 7};

  @Test
  void pointsOnALineHaveNoSpread() {
    StraightLine line = StraightLine.fit(X, new double[] {1, 3, 7, 13});
    assertThat(line.slope()).isEqualTo(2);
    assertThat(line.intercept()).isEqualTo(-1);
    assertThat(line.slopeStandardError()).isZero();
    assertThat(line.slopeSignificance()).isZero();
    assertThat(line.slopeHalfWidth(0.95)).isZero();
  }

  @Test
  void aLevelLineHasNoSlopeAtAll() {
    StraightLine line = StraightLine.fit(X, new double[] {5, 5, 5, 5});
    assertThat(line.slopeSignificance()).isEqualTo(1);
  }

  @Test
  void refusesWhatHasNoLine() {
    double[] two = {1, 2};
    assertThatIllegalArgumentException().isThrownBy(() -> StraightLine.fit(two, two));
    assertThatIllegalArgumentException().isThrownBy(() -> StraightLine.fit(X, two));
    double[] same = {3, 3, 3};
    assertThatIllegalArgumentException().isThrownBy(() -> StraightLine.fit(same, same));
    double[] huge = {1, 1e101, 3};
    double[] unknown = {1, Double.NaN, 3};
    double[] good = {1, 2, 3};
    assertThatIllegalArgumentException().isThrownBy(() -> StraightLine.fit(unknown, good));
    assertThatIllegalArgumentException().isThrownBy(() -> StraightLine.fit(good, unknown));
    assertThatIllegalArgumentException().isThrownBy(() -> StraightLine.fit(good, huge));
    StraightLine line = StraightLine.fit(good, good);
    assertThatIllegalArgumentException().isThrownBy(() -> line.slopeHalfWidth(1));
  }

  @Property
  void scalingAndShiftingYScalesAndShiftsTheLine(
      @ForAll("fourValues") double[] y,
      @ForAll @DoubleRange(min = 0.1, max = 10) double factor,
      @ForAll @DoubleRange(min = -100, max = 100) double shift) {
    StraightLine line = StraightLine.fit(X, y);
    StraightLine other =
        StraightLine.fit(X, Arrays.stream(y).map(v -> factor * v + shift).toArray());
    assertThat(other.slope()).isCloseTo(factor * line.slope(), within(1e-9));
    assertThat(other.intercept()).isCloseTo(factor * line.intercept() + shift, within(1e-9));
    assertThat(other.slopeStandardError())
        .isCloseTo(factor * line.slopeStandardError(), within(1e-9));
  }

  @Provide
  Arbitrary<double[]> fourValues() {
    return Arbitraries.doubles().between(-100, 100).array(double[].class).ofSize(4);
  }
}
