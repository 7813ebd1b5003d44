package loopwright.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Arrays;
import loopwright.testing.Reference;
import org.junit.jupiter.api.Test;

/** Against published results; sources, data and tolerances are in the headers of the files. */
class StraightLineValidationTest {
  private static final double REL_1E_10 = 1e-8; // in percent

  @Test
  void nistNorris() {
    Reference norris = Reference.read("nist-strd-norris.csv");
    StraightLine line = StraightLine.fit(norris.column("x"), norris.column("y"));
    assertThat(lre(line.intercept(), -0.262323073774029)).isGreaterThanOrEqualTo(11);
    assertThat(lre(line.slope(), 1.00211681802045)).isGreaterThanOrEqualTo(11);
    assertThat(lre(line.interceptStandardError(), 0.232818234301152)).isGreaterThanOrEqualTo(11);
    assertThat(lre(line.slopeStandardError(), 0.429796848199937E-03)).isGreaterThanOrEqualTo(11);
    assertThat(lre(line.residualStandardDeviation(), 0.884796396144373)).isGreaterThanOrEqualTo(11);
    assertThat(line.degreesOfFreedom()).isEqualTo(34);
  }

  @Test
  void gumThermometer() {
    Reference thermometer = Reference.read("gum-h3-thermometer.csv");
    double[] fromTwenty = Arrays.stream(thermometer.column("t")).map(t -> t - 20).toArray();
    StraightLine line = StraightLine.fit(fromTwenty, thermometer.column("b"));

    assertThat(line.intercept()).as("published").isCloseTo(-0.1712, within(0.00005));
    assertThat(line.interceptStandardError()).isCloseTo(0.0029, within(0.00005));
    assertThat(line.slope()).isCloseTo(0.00218, within(0.000005));
    assertThat(line.slopeStandardError()).isCloseTo(0.00067, within(0.000005));
    assertThat(line.correlation()).isCloseTo(-0.930, within(0.0005));
    assertThat(line.residualStandardDeviation()).isCloseTo(0.0035, within(0.00005));
    assertThat(line.at(10)).isCloseTo(-0.1494, within(0.00005));
    assertThat(line.standardErrorAt(10)).isCloseTo(0.0041, within(0.00005));
    assertThat(line.degreesOfFreedom()).isEqualTo(9);

    assertThat(line.intercept())
        .as("recomputed")
        .isCloseTo(-0.17120379013135, withinPercentage(REL_1E_10));
    assertThat(line.interceptStandardError())
        .isCloseTo(0.00287759783515995, withinPercentage(REL_1E_10));
    assertThat(line.slope()).isCloseTo(0.00218269773988728, withinPercentage(REL_1E_10));
    assertThat(line.slopeStandardError())
        .isCloseTo(0.000667938773227832, withinPercentage(REL_1E_10));
    assertThat(line.correlation()).isCloseTo(-0.930429603093446, withinPercentage(REL_1E_10));
    assertThat(line.at(10)).isCloseTo(-0.149376812732477, withinPercentage(REL_1E_10));
    assertThat(line.standardErrorAt(10))
        .isCloseTo(0.00413859575285495, withinPercentage(REL_1E_10));
  }

  @Test
  void kesselPressure() {
    Reference kessel = Reference.read("kessel-2012-table-4.csv");
    StraightLine line = StraightLine.fit(kessel.column("x"), kessel.column("y"));
    assertThat(line.intercept()).isCloseTo(0.0022721552637347, withinPercentage(REL_1E_10));
    assertThat(line.slope()).isCloseTo(9.7993358364831, withinPercentage(REL_1E_10));
    assertThat(line.interceptStandardError())
        .isCloseTo(0.00087384389402496, withinPercentage(REL_1E_10));
    assertThat(line.slopeStandardError())
        .isCloseTo(0.000723830653310571, withinPercentage(REL_1E_10));
    assertThat(line.residualStandardDeviation())
        .isCloseTo(0.00154941107805159, withinPercentage(REL_1E_10));
  }

  /** Student's t: two-sided 95 % at 9 degrees of freedom is 2.26 (JCGM 100:2008, table G.2). */
  @Test
  void studentHalfWidth() {
    StraightLine line = new StraightLine(1, 0, 1, 1, 0, 1, 11, 0);
    assertThat(line.slopeHalfWidth(0.95)).isCloseTo(2.26, within(0.005));
    assertThat(new StraightLine(2.262157162798, 0, 1, 1, 0, 1, 11, 0).slopeSignificance())
        .isCloseTo(0.05, within(1e-9));
  }

  /** Log relative error: digits that agree. */
  private static double lre(double computed, double certified) {
    return computed == certified
        ? 15
        : -Math.log10(Math.abs(computed - certified) / Math.abs(certified));
  }
}
