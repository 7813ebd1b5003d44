package loopwright.certificate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import loopwright.certificate.Report.Column;
import loopwright.uncertainty.Budget;
import loopwright.uncertainty.Decision;
import loopwright.uncertainty.RunUncertainty;
import loopwright.uncertainty.Statement;
import loopwright.units.Unit;

/** Results with their uncertainties and the decisions about them, as a table. */
final class Decided {
  private Decided() {}

  /** The worst of the decisions about ISF and DSL. */
  static Decision worst(RunUncertainty run) {
    return Stream.concat(run.isf().stream(), Stream.of(run.maxDsl()))
        .map(Statement::decision)
        .max(Comparator.naturalOrder())
        .orElseThrow();
  }

  static Report.Table table(RunUncertainty run) {
    List<List<String>> rows = new ArrayList<>();
    run.isf().stream()
        .min(
            Comparator.comparing((Statement s) -> -s.decision().ordinal())
                .thenComparing(Statement::conformityProbability))
        .ifPresent(isf -> rows.add(row("ISF, least sure", isf)));
    rows.add(row("ASF", run.asf()));
    rows.add(row("DSL", run.maxDsl()));
    return new Report.Table(
        List.of(
            Column.words("Result", 1.1),
            Column.figures("Value", 2.6),
            Column.figures("U, 95 %", 2.5),
            Column.figures("k", 0.5),
            Column.figures("Limits", 2.2),
            Column.figures("Probability that it conforms", 1.2),
            Column.words("Decision", 1.5)),
        rows);
  }

  private static List<String> row(String name, Statement statement) {
    Budget budget = statement.budget();
    return List.of(
        name,
        both(budget.unit(), budget.estimate()),
        both(budget.unit(), budget.expandedUncertainty()),
        Printed.say("%.2f", budget.coverageFactor()),
        limits(statement),
        Printed.probability(statement.conformityProbability()),
        statement.decision().label());
  }

  private static boolean isGap(String unit) {
    return unit.equals(Unit.MICROMETRE.symbol());
  }

  private static String both(String unit, double value) {
    return isGap(unit) ? Printed.gapBoth(value) : Printed.slopeBoth(value);
  }

  private static String limits(Statement statement) {
    double low = statement.limits().lower();
    double high = statement.limits().upper();
    if (isGap(statement.budget().unit())) {
      return "at most " + Printed.gapBoth(high);
    }
    return "%s to %s mV/µm (%s to %s mV/mil)"
        .formatted(
            Printed.slopeMetric(low),
            Printed.slopeMetric(high),
            Printed.slopeMil(low),
            Printed.slopeMil(high));
  }
}
