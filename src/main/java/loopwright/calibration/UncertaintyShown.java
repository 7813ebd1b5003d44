package loopwright.calibration;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.curve.Curve;
import loopwright.curve.CurveAnalysis;
import loopwright.curve.CurveResult;
import loopwright.register.ProfileTerms;
import loopwright.standard.StandardUsed;
import loopwright.uncertainty.Budget;
import loopwright.uncertainty.BudgetLine;
import loopwright.uncertainty.CurveUncertainty;
import loopwright.uncertainty.Decision;
import loopwright.uncertainty.MonteCarlo;
import loopwright.uncertainty.RunUncertainty;
import loopwright.uncertainty.Statement;
import loopwright.web.UnitsShown;

/**
 * What a curve's results are worth and what may be stated about them, in words and rows.
 *
 * @param missing why nothing is stated; empty when something is, and then the rest counts
 * @param decision the worst of those about ISF and DSL
 */
record UncertaintyShown(
    String missing,
    String rule,
    String decision,
    String guideWord,
    List<Stated> results,
    List<OfIncrement> increments,
    List<Table> budgets,
    List<String> remarks,
    List<Check> checks) {
  private static final int TRIALS = 20_000;

  /** A result with its expanded uncertainty and the decision about it. */
  record Stated(
      String name,
      String value,
      String expanded,
      String factor,
      String limits,
      String probability,
      String decision) {}

  /** A judged increment. */
  record OfIncrement(
      String gap, String isf, String expanded, String probability, String decision) {}

  /** A budget, one row a component. */
  record Table(
      String name,
      String unit,
      List<Line> lines,
      String combined,
      String degrees,
      String factor,
      String expanded,
      String biggest) {}

  /** A component. */
  record Line(
      String name,
      String distribution,
      String uncertainty,
      String sensitivity,
      String contribution,
      String share,
      String degrees) {}

  /** What chance makes of a budget. */
  record Check(String name, String linear, String chance, boolean agrees) {}

  static UncertaintyShown of(
      Curve curve,
      CurveResult result,
      ProfileTerms terms,
      List<StandardUsed> used,
      Conditions under,
      UnitsShown units) {
    EquipmentErrors errors = EquipmentErrors.of(curve, used, under);
    if (!errors.missing().isEmpty()) {
      return missing(errors.missing());
    }
    CurveUncertainty uncertainty = CurveUncertainty.of(result, errors.sources(), terms.rule());
    List<String> remarks = new ArrayList<>(uncertainty.remarks());
    remarks.addAll(errors.notes());
    corrections(curve, result, used, units).ifPresent(remarks::add);
    return new Telling(uncertainty, terms, units).shown(remarks);
  }

  private static UncertaintyShown missing(String why) {
    return new UncertaintyShown(
        why, "", "", "", List.of(), List.of(), List.of(), List.of(), List.of());
  }

  /** The same with the budgets checked by chance; the seed is fixed, so that it comes out again. */
  static UncertaintyShown checked(
      UncertaintyShown shown,
      Curve curve,
      CurveResult result,
      ProfileTerms terms,
      List<StandardUsed> used,
      Conditions under,
      UnitsShown units,
      long seed) {
    if (!shown.missing().isEmpty()) {
      return shown;
    }
    CurveUncertainty uncertainty =
        CurveUncertainty.of(result, EquipmentErrors.of(curve, used, under).sources(), terms.rule());
    List<Check> checks =
        uncertainty.worse().monteCarlo(result, TRIALS, seed).stream()
            .map(check -> check(check, new Amounts(units)))
            .toList();
    return new UncertaintyShown(
        shown.missing,
        shown.rule,
        shown.decision,
        shown.guideWord,
        shown.results,
        shown.increments,
        shown.budgets,
        shown.remarks,
        checks);
  }

  public int trials() {
    return TRIALS;
  }

  private static Check check(MonteCarlo check, Amounts amounts) {
    Budget budget = check.budget();
    double u = budget.expandedUncertainty();
    return new Check(
        budget.measurand(),
        amounts.interval(budget.unit(), budget.estimate() - u, budget.estimate() + u),
        amounts.interval(budget.unit(), check.low(), check.high()),
        check.agrees());
  }

  /** What the certificates' corrections would make of the results. */
  private static Optional<String> corrections(
      Curve curve, CurveResult result, List<StandardUsed> used, UnitsShown units) {
    if (!EquipmentErrors.corrects(curve, used)) {
      return Optional.empty();
    }
    CurveResult with = CurveAnalysis.of(EquipmentErrors.corrected(curve, used), result.profile());
    Figures figures = new Figures(units);
    return Optional.of(
        "Readings stand as typed, without the corrections of the certificates. With them: ASF %s, DSL %s, %s."
            .formatted(
                figures.slope(with.asf()),
                figures.deviation(with.maxDsl()),
                with.verdict().label()));
  }

  /** Puts one run's numbers into words. */
  private record Telling(CurveUncertainty uncertainty, ProfileTerms terms, UnitsShown units) {

    UncertaintyShown shown(List<String> remarks) {
      RunUncertainty run = uncertainty.worse();
      Decision worst =
          Stream.concat(run.isf().stream(), Stream.of(run.maxDsl()))
              .map(Statement::decision)
              .max(Comparator.naturalOrder())
              .orElseThrow();
      return new UncertaintyShown(
          "",
          terms.ruleInWords(),
          worst.label(),
          worst.guideWord(),
          results(run),
          increments(run),
          budgets(run),
          remarks,
          List.of());
    }

    private List<Stated> results(RunUncertainty run) {
      List<Stated> results = new ArrayList<>();
      leastSure(run).ifPresent(isf -> results.add(stated("ISF, the least sure", isf)));
      results.add(stated("ASF", run.asf()));
      results.add(stated("DSL", run.maxDsl()));
      return results;
    }

    private static Optional<Statement> leastSure(RunUncertainty run) {
      return run.isf().stream()
          .min(
              Comparator.comparing((Statement s) -> -s.decision().ordinal())
                  .thenComparing(Statement::conformityProbability));
    }

    private Stated stated(String name, Statement statement) {
      Budget budget = statement.budget();
      Amounts amounts = new Amounts(units);
      return new Stated(
          name,
          amounts.amount(budget.unit(), budget.estimate()),
          "±" + amounts.amount(budget.unit(), budget.expandedUncertainty()),
          say("%.2f", budget.coverageFactor()),
          limits(statement, amounts),
          probability(statement.conformityProbability()),
          statement.decision().label());
    }

    private static String limits(Statement statement, Amounts amounts) {
      String unit = statement.budget().unit();
      return Double.isInfinite(statement.limits().lower())
          ? "at most " + amounts.amount(unit, statement.limits().upper())
          : amounts.interval(unit, statement.limits().lower(), statement.limits().upper());
    }

    private List<OfIncrement> increments(RunUncertainty run) {
      Amounts amounts = new Amounts(units);
      return run.points().stream()
          .flatMap(
              point ->
                  point.judged().stream()
                      .map(
                          s ->
                              new OfIncrement(
                                  point.point().reading().gap().toString(),
                                  amounts.number(s.budget().unit(), s.budget().estimate()),
                                  amounts.number(
                                      s.budget().unit(), s.budget().expandedUncertainty()),
                                  probability(s.conformityProbability()),
                                  s.decision().label())))
          .toList();
    }

    private List<Table> budgets(RunUncertainty run) {
      List<Table> tables = new ArrayList<>();
      leastSure(run).ifPresent(isf -> tables.add(table(isf.budget())));
      tables.add(table(run.asf().budget()));
      tables.add(table(run.leastSquares()));
      tables.add(table(run.maxDsl().budget()));
      return tables;
    }

    private static Table table(Budget budget) {
      return new Table(
          budget.measurand(),
          budget.unit(),
          budget.lines().stream().map(line -> line(line, budget)).toList(),
          significant(budget.standardUncertainty()),
          degrees(budget.effectiveDegreesOfFreedom()),
          say("%.2f", budget.coverageFactor()),
          significant(budget.expandedUncertainty()),
          budget.biggest().map(BudgetLine::name).orElse(""));
    }

    private static Line line(BudgetLine line, Budget budget) {
      return new Line(
          line.name(),
          line.distribution(),
          significant(line.standardUncertainty()) + " " + line.unit(),
          significant(line.sensitivity()),
          significant(line.contribution()),
          say("%.0f %%", 100 * budget.share(line)),
          degrees(line.degreesOfFreedom()));
    }
  }

  /** {@code 0.973}; certainty is never claimed by rounding. */
  static String probability(double p) {
    if (p > 0.9995) {
      return "above 0.999";
    }
    return p < 0.0005 ? "below 0.001" : say("%.3f", p);
  }

  private static String degrees(double degrees) {
    return Double.isInfinite(degrees) || degrees > 9999 ? "∞" : say("%.0f", Math.floor(degrees));
  }

  /** Three significant digits. */
  private static String significant(double number) {
    if (number == 0) {
      return "0";
    }
    return new BigDecimal(number).round(new MathContext(3)).toPlainString();
  }

  private static String say(String pattern, Object... parts) {
    return String.format(Locale.ROOT, pattern, parts);
  }
}
