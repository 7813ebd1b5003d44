package loopwright.uncertainty;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * An uncertainty budget: components, combined standard uncertainty u = √Σ(cᵢuᵢ)², effective degrees
 * of freedom after Welch and Satterthwaite, coverage factor from Student's t, expanded uncertainty.
 * Components are independent of one another; what is correlated is one component.
 *
 * @param measurand in words
 * @param unit of the result
 * @param estimate the result
 * @param lines its components
 * @see "JCGM 100:2008, 5.1.2 equation (10), G.4.1 equation (G.2b), G.6.4"
 */
public record Budget(String measurand, String unit, double estimate, List<BudgetLine> lines) {
  /** The coverage probability that expanded uncertainties are given for. */
  public static final double COVERAGE = 0.95;

  public Budget {
    lines = List.copyOf(lines);
  }

  /** Of a result made of readings, with the sources of their errors. */
  static Budget of(Measurand measurand, Readings readings, List<ErrorSource> sources) {
    Measurand.Gradient gradient = measurand.gradient(readings);
    return new Budget(
        measurand.name(),
        measurand.unit(),
        measurand.value(readings),
        sources.stream().map(source -> line(source, readings, gradient)).toList());
  }

  private static BudgetLine line(
      ErrorSource source, Readings readings, Measurand.Gradient gradient) {
    double[] values = readings.of(source.quantity());
    double[] sensitivities = gradient.by(source.quantity());
    double variance = unitSource(source).covariance(values).ofResult(sensitivities);
    return new BudgetLine(
        source.name(),
        source.unit(),
        source.distribution().label() + ", " + source.spread().label(),
        source.standardUncertainty(),
        Math.sqrt(variance),
        source.degreesOfFreedom());
  }

  /** The same source with u = 1, whose effect on the result is the sensitivity coefficient. */
  private static ErrorSource unitSource(ErrorSource source) {
    return ErrorSource.known(source.name(), source.quantity(), source.spread(), 1);
  }

  /** Combined standard uncertainty, in the result's unit. */
  public double standardUncertainty() {
    return Math.sqrt(lines.stream().mapToDouble(line -> square(line.contribution())).sum());
  }

  /** ν = u⁴ / Σ(uᵢ⁴/νᵢ), unrounded; infinite when no component has finite ones. */
  public double effectiveDegreesOfFreedom() {
    double combined = standardUncertainty();
    if (combined == 0) {
      return Double.POSITIVE_INFINITY;
    }
    double sum =
        lines.stream()
            .mapToDouble(
                line -> square(square(line.contribution() / combined)) / line.degreesOfFreedom())
            .sum();
    return sum == 0 ? Double.POSITIVE_INFINITY : 1 / sum;
  }

  /** Effective degrees of freedom cut down to the next whole number, as G.4.1 allows. */
  public double wholeDegreesOfFreedom() {
    return Math.max(1, Math.floor(effectiveDegreesOfFreedom() + 1e-9));
  }

  /** For 95 %, two-sided. */
  public double coverageFactor() {
    return coverageFactor(COVERAGE);
  }

  /** Student's t for a two-sided coverage probability above 0 and below 1. */
  public double coverageFactor(double probability) {
    return Student.factor(wholeDegreesOfFreedom(), probability);
  }

  /** U for 95 %, in the result's unit: the result lies within estimate ± U. */
  public double expandedUncertainty() {
    return coverageFactor() * standardUncertainty();
  }

  /** The component that contributes most; empty when none contributes. */
  public Optional<BudgetLine> biggest() {
    return lines.stream()
        .filter(line -> line.contribution() > 0)
        .max(Comparator.comparingDouble(BudgetLine::contribution));
  }

  /** Share of a component in the variance, 0 to 1. */
  public double share(BudgetLine line) {
    double combined = standardUncertainty();
    return combined == 0 ? 0 : square(line.contribution() / combined);
  }

  private static double square(double x) {
    return x * x;
  }
}
