package loopwright.calibration;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import java.util.Optional;
import loopwright.uncertainty.Budget;
import loopwright.uncertainty.BudgetLine;
import loopwright.uncertainty.CurveUncertainty;
import loopwright.uncertainty.RunUncertainty;
import loopwright.uncertainty.Statement;
import org.jspecify.annotations.Nullable;

/**
 * What {@code analyse} adds to its JSON when uncertainties are given. Expanded uncertainties are
 * for 95 %, two-sided, in the unit of the value they belong to; decisions are those of the rule.
 *
 * @param coverageFactor Student's t for 95 %, of the average scale factor
 * @param asfDecision by the profile's ISF limits
 * @param uncertaintyBudgets components of the worse run's results
 * @param uncertaintyRemarks what has to be said beside the numbers
 */
public record UncertaintyFields(
    String decisionRule,
    double coverageFactor,
    double asfExpandedUncertainty,
    double asfConformityProbability,
    String asfDecision,
    double leastSquaresSlopeExpandedUncertainty,
    double maxDslExpandedUncertainty,
    double maxDslConformityProbability,
    String maxDslDecision,
    List<Table> uncertaintyBudgets,
    List<String> uncertaintyRemarks) {

  /** Beside one reading; null where the reading isn't judged or ends no judged increment. */
  public record OfPoint(
      @Nullable Double isfExpandedUncertainty,
      @Nullable Double isfConformityProbability,
      @Nullable String isfDecision) {

    static OfPoint of(RunUncertainty.PointUncertainty point) {
      Optional<Budget> budget = point.isf().filter(isf -> point.point().judged());
      return new OfPoint(
          budget.map(Budget::expandedUncertainty).orElse(null),
          point.judged().map(Statement::conformityProbability).orElse(null),
          point.judged().map(judged -> judged.decision().label()).orElse(null));
    }
  }

  /** One budget as a table. */
  public record Table(
      String result,
      String unit,
      double value,
      double standardUncertainty,
      @Nullable Double effectiveDegreesOfFreedom,
      double coverageFactor,
      double expandedUncertainty,
      @Nullable String biggestContributor,
      List<Row> components) {

    static Table of(Budget budget) {
      return new Table(
          budget.measurand(),
          budget.unit(),
          budget.estimate(),
          budget.standardUncertainty(),
          finite(budget.effectiveDegreesOfFreedom()),
          budget.coverageFactor(),
          budget.expandedUncertainty(),
          budget.biggest().map(BudgetLine::name).orElse(null),
          budget.lines().stream().map(line -> Row.of(line, budget)).toList());
    }
  }

  /** One component; degrees of freedom null for infinitely many. */
  public record Row(
      String component,
      String distribution,
      double standardUncertainty,
      String unit,
      double sensitivity,
      @Nullable Double degreesOfFreedom,
      double contribution,
      @JsonProperty("shareOfVariance") double share) {

    static Row of(BudgetLine line, Budget budget) {
      return new Row(
          line.name(),
          line.distribution(),
          line.standardUncertainty(),
          line.unit(),
          line.sensitivity(),
          finite(line.degreesOfFreedom()),
          line.contribution(),
          budget.share(line));
    }
  }

  static UncertaintyFields of(CurveUncertainty uncertainty, List<String> remarks) {
    RunUncertainty run = uncertainty.worse();
    return new UncertaintyFields(
        uncertainty.rule().label(),
        run.asf().budget().coverageFactor(),
        run.asf().budget().expandedUncertainty(),
        run.asf().conformityProbability(),
        run.asf().decision().label(),
        run.leastSquares().expandedUncertainty(),
        run.maxDsl().budget().expandedUncertainty(),
        run.maxDsl().conformityProbability(),
        run.maxDsl().decision().label(),
        List.of(
            Table.of(run.asf().budget()),
            Table.of(run.leastSquares()),
            Table.of(run.maxDsl().budget())),
        remarks);
  }

  private static @Nullable Double finite(double number) {
    return Double.isInfinite(number) ? null : number;
  }
}
