package loopwright.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import loopwright.uncertainty.Budget;
import loopwright.uncertainty.BudgetLine;
import loopwright.uncertainty.CurveUncertainty;
import loopwright.uncertainty.RunUncertainty;
import loopwright.uncertainty.Statement;
import loopwright.units.Unit;

/** Uncertainties and decisions as lines for a terminal, in the unit the gaps were given in. */
final class UncertaintyReport {
  private final PrintWriter out;
  private final CurveUncertainty uncertainty;
  private final Unit gapUnit;
  private final Unit slopeUnit;

  UncertaintyReport(PrintWriter out, CurveUncertainty uncertainty, Unit gapUnit) {
    this.out = out;
    this.uncertainty = uncertainty;
    this.gapUnit = gapUnit;
    this.slopeUnit = gapUnit == Unit.MIL ? Unit.MILLIVOLT_PER_MIL : Unit.MILLIVOLT_PER_MICROMETRE;
  }

  void print(List<String> remarks) {
    RunUncertainty run = uncertainty.worse();
    out.println();
    out.printf(
        Locale.ROOT,
        "Uncertainty (95 %%, k = %.3f) and decision by the %s rule%n",
        run.asf().budget().coverageFactor(),
        uncertainty.rule().label());
    out.printf(
        Locale.ROOT,
        "%12s %14s %12s  %s%n",
        "to gap, " + gapUnit.symbol(),
        "U(ISF)",
        "p(conforms)",
        "decision");
    run.points().forEach(this::row);
    line("ASF", run.asf(), slopeUnit);
    line("DSL", run.maxDsl(), gapUnit);
    budget(run.asf().budget());
    budget(run.maxDsl().budget());
    remarks.forEach(remark -> out.println("- " + remark));
  }

  private void row(RunUncertainty.PointUncertainty point) {
    point
        .judged()
        .ifPresent(
            judged ->
                out.printf(
                    Locale.ROOT,
                    "%12.1f %14s %12.4f  %s%n",
                    gapUnit.fromCanonical(point.point().gapMicrometres()),
                    amount(judged.budget().expandedUncertainty(), slopeUnit),
                    judged.conformityProbability(),
                    judged.decision().label()));
  }

  private void line(String name, Statement statement, Unit unit) {
    out.printf(
        Locale.ROOT,
        "%-14s %s ± %s: %s (p = %.4f)%n",
        name,
        amount(statement.budget().estimate(), unit),
        amount(statement.budget().expandedUncertainty(), unit),
        statement.decision().label(),
        statement.conformityProbability());
  }

  private void budget(Budget budget) {
    out.println();
    out.printf(
        Locale.ROOT,
        "Budget of the %s, %s: u = %.4g, U = %.4g%n",
        budget.measurand(),
        budget.unit(),
        budget.standardUncertainty(),
        budget.expandedUncertainty());
    for (BudgetLine line : budget.lines()) {
      out.printf(
          Locale.ROOT,
          "  %-16s u = %-9s sensitivity %-10s contributes %-10s %3.0f %%  (%s)%n",
          line.name(),
          String.format(Locale.ROOT, "%.4g", line.standardUncertainty()),
          String.format(Locale.ROOT, "%.4g", line.sensitivity()),
          String.format(Locale.ROOT, "%.4g", line.contribution()),
          100 * budget.share(line),
          line.distribution());
    }
  }

  private static String amount(double canonical, Unit unit) {
    return String.format(Locale.ROOT, "%.3f %s", unit.fromCanonical(canonical), unit.symbol());
  }
}
