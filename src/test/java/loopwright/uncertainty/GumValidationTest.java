package loopwright.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.List;
import loopwright.numerics.StraightLine;
import loopwright.testing.Reference;
import org.junit.jupiter.api.Test;

/** Against published results; sources, data and tolerances are in the headers of the files. */
class GumValidationTest {
  private static final double REL_1E_9 = 1e-7; // in percent

  @Test
  void studentFactorsOfTableG2() {
    Reference table = Reference.read("gum-g2-student-t.csv");
    double[] nu = table.column("nu");
    double[] percent = table.column("percent");
    double[] exact = table.column("exact");
    assertThat(nu).hasSizeGreaterThan(100);
    for (int i = 0; i < nu.length; i++) {
      // the columns headed 68.27, 95.45 and 99.73 stand for k = 1, 2, 3 of the normal distribution
      double probability = probability(percent[i]);
      assertThat(Student.factor(nu[i], probability))
          .as("ν = %s, %s %%", nu[i], percent[i])
          .isCloseTo(exact[i], withinPercentage(REL_1E_9));
    }
  }

  private static double probability(double percent) {
    double sigmas = percent == 68.27 ? 1 : percent == 95.45 ? 2 : percent == 99.73 ? 3 : 0;
    return sigmas == 0
        ? percent / 100
        : 2 * Student.probability(Double.POSITIVE_INFINITY, sigmas) - 1;
  }

  /** Infinitely many: the quantiles of the normal distribution, any table. */
  @Test
  void studentFactorWithoutLimit() {
    assertThat(Student.factor(Double.POSITIVE_INFINITY, 0.95))
        .isCloseTo(1.959963984540054, withinPercentage(REL_1E_9));
    assertThat(Student.factor(Double.POSITIVE_INFINITY, 0.99))
        .isCloseTo(2.5758293035489004, withinPercentage(REL_1E_9));
  }

  @Test
  void endGaugeOfH1() {
    Reference gauge = Reference.read("gum-h1-end-gauge.csv");
    double[] u = gauge.column("uncertainty");
    double[] c = gauge.column("sensitivity");
    double[] nu = gauge.column("nu");
    List<BudgetLine> lines = new ArrayList<>();
    for (int i = 0; i < u.length; i++) {
      lines.add(new BudgetLine(gauge.rows().get(i).get(0), "", "normal", u[i], c[i], nu[i]));
    }
    Budget budget = new Budget("length", "nm", 50_000_838, lines);
    assertThat(budget.standardUncertainty())
        .isCloseTo(31.6638791110086, withinPercentage(REL_1E_9))
        .isCloseTo(32, within(0.5));
    assertThat(budget.effectiveDegreesOfFreedom())
        .isCloseTo(16.7518557376272, withinPercentage(REL_1E_9));
    assertThat(budget.wholeDegreesOfFreedom()).isEqualTo(16);
    assertThat(budget.coverageFactor(0.99)).isCloseTo(2.92, within(0.005));
    // published: 2.92 · 32 = 93, from a u rounded up; 2.92 · 31.66 = 92.48 rounds to 92 or 93
    assertThat(budget.coverageFactor(0.99) * 32).isCloseTo(93, within(0.5));
    assertThat(budget.biggest().orElseThrow().name()).isEqualTo("standard");
    assertThat(budget.share(lines.get(0))).isCloseTo(0.623378, within(5e-7));
  }

  /** JCGM 100:2008, G.4.1, example (from memory): 1.03 %, 19.0, 2.2 %. */
  @Test
  void effectiveDegreesOfG4() {
    List<BudgetLine> lines =
        List.of(
            new BudgetLine("1", "%", "normal", 0.25, 1, 9),
            new BudgetLine("2", "%", "normal", 0.57, 1, 4),
            new BudgetLine("3", "%", "normal", 0.82, 1, 14));
    Budget budget = new Budget("y", "%", 1, lines);
    assertThat(budget.standardUncertainty()).isCloseTo(1.03, within(0.005));
    assertThat(budget.effectiveDegreesOfFreedom()).isCloseTo(19.0, within(0.05));
  }

  /** Slope of H.3, and the correction at 30 °C from two correlated parameters. */
  @Test
  void thermometerOfH3() {
    Reference thermometer = Reference.read("gum-h3-thermometer.csv");
    double[] t = thermometer.column("t");
    double[] b = thermometer.column("b");
    StraightLine line = StraightLine.fit(t, b);
    ErrorSource residuals =
        new ErrorSource(
            "residuals",
            Quantity.VOLTS,
            Spread.EACH_READING,
            Distribution.NORMAL,
            line.residualStandardDeviation(),
            9);
    Budget slope = Budget.of(new LeastSquaresSlope(), new Readings(t, b), List.of(residuals));
    assertThat(slope.estimate()).isCloseTo(-1000 * 0.00218269773988728, withinPercentage(1e-7));
    assertThat(slope.standardUncertainty())
        .isCloseTo(1000 * 0.000667938773227832, withinPercentage(REL_1E_9));
    assertThat(slope.wholeDegreesOfFreedom()).isEqualTo(9);

    double u1 = 0.00287759783515995;
    double u2 = 0.000667938773227832;
    double both = -0.930429603093446 * u1 * u2;
    Covariance fit = new Covariance(new double[][] {{u1 * u1, both}, {both, u2 * u2}});
    assertThat(Math.sqrt(fit.ofResult(new double[] {1, 10})))
        .isCloseTo(0.00413859575285495, withinPercentage(REL_1E_9))
        .isCloseTo(0.0041, within(0.00005));
  }

  @Test
  void conformityOfJcgm106() {
    Reference cases = Reference.read("jcgm-106-conformity.csv");
    for (int i = 0; i < cases.rows().size(); i++) {
      Limits limits = new Limits(cases.column("lower")[i], cases.column("upper")[i]);
      double probability =
          limits.conformityProbability(
              cases.column("value")[i], cases.column("u")[i], cases.column("nu")[i]);
      assertThat(probability)
          .as(cases.rows().get(i).get(0))
          .isCloseTo(cases.column("recomputed")[i], within(1e-9));
      double published = cases.column("published")[i];
      if (!Double.isNaN(published)) {
        assertThat(probability).isCloseTo(published, within(0.005));
      }
    }
  }
}
