package loopwright.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class MonotoneCurveTest {
  @Test
  void aLineStaysALineAndRunsOn() {
    MonotoneCurve line =
        MonotoneCurve.through(new double[] {0, 1, 3, 4}, new double[] {1, -1, -5, -7});
    for (double x : new double[] {-2, 0, 0.3, 1, 2, 3.9, 4, 10}) {
      assertThat(line.at(x)).isCloseTo(1 - 2 * x, within(1e-12));
      assertThat(line.slopeAt(x)).isCloseTo(-2, within(1e-12));
    }
  }

  /** By hand: harmonic mean of chords 1 and 3 of equal width is 1.5. */
  @Test
  void theSlopeAtAPointIsTheHarmonicMean() {
    MonotoneCurve curve = MonotoneCurve.through(new double[] {0, 1, 2}, new double[] {0, 1, 4});
    assertThat(curve.slopeAt(1)).isCloseTo(1.5, within(1e-12));
    assertThat(curve.at(1)).isEqualTo(1);
    assertThat(curve.slopeAt(0)).isEqualTo(1);
    assertThat(curve.slopeAt(2)).isEqualTo(3);
  }

  @Property(tries = 200)
  void itNeverTurnsAndMeetsEveryPoint(
      @ForAll @Size(min = 2, max = 9) List<@DoubleRange(min = 0.01, max = 5) Double> steps) {
    double[] x = new double[steps.size() + 1];
    double[] y = new double[steps.size() + 1];
    for (int i = 0; i < steps.size(); i++) {
      x[i + 1] = x[i] + 1 + i % 3;
      y[i + 1] = y[i] - steps.get(i);
    }
    MonotoneCurve curve = MonotoneCurve.through(x, y);
    for (int i = 0; i < x.length; i++) {
      assertThat(curve.at(x[i])).isCloseTo(y[i], within(1e-12));
    }
    double before = curve.at(-1);
    for (double at = -0.99; at < x[steps.size()] + 1; at += 0.01) {
      assertThat(curve.at(at)).isLessThanOrEqualTo(before + 1e-12);
      before = curve.at(at);
    }
  }

  @Test
  void whatTurnsOrIsNoNumberIsRefused() {
    double[] x = {0, 1, 2};
    for (double[] y : new double[][] {{0, 1, 1}, {0, 1, 0}, {0, Double.NaN, 2}, {0, 1}}) {
      assertThatThrownBy(() -> MonotoneCurve.through(x, y))
          .as(Arrays.toString(y))
          .isInstanceOf(IllegalArgumentException.class);
    }
  }

  @Test
  void aValueIsFoundWhereTheCurveHasItAndNowhereElse() {
    MonotoneCurve falling =
        MonotoneCurve.through(new double[] {250, 500, 750}, new double[] {-2, -4.1, -5.9});
    assertThat(falling.whereIs(-4.1)).hasValueCloseTo(500.0, within(1e-9));
    assertThat(falling.at(falling.whereIs(-5).getAsDouble())).isCloseTo(-5, within(1e-12));
    assertThat(falling.whereIs(-2)).hasValueCloseTo(250.0, within(1e-9));
    assertThat(falling.whereIs(-1.9)).isEmpty();
    assertThat(falling.whereIs(-6)).isEmpty();
    MonotoneCurve rising = MonotoneCurve.through(new double[] {0, 1}, new double[] {3, 5});
    assertThat(rising.whereIs(4)).hasValueCloseTo(0.5, within(1e-12));
    assertThat(rising.whereIs(2.9)).isEmpty();
  }
}
