package loopwright.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import loopwright.curve.CurvePoint;
import loopwright.curve.CurveResult;
import loopwright.curve.Finding;
import loopwright.curve.GapRange;
import loopwright.curve.RunResult;
import loopwright.curve.ToleranceProfile;
import loopwright.problem.Text;
import loopwright.units.Unit;

/** A result as lines for a terminal, rounded for reading, in the unit the gaps were given in. */
final class CurveReport {
  private static final String NOTHING = "-";

  private final PrintWriter out;
  private final CurveResult result;
  private final ToleranceProfile profile;
  private final Unit gapUnit;
  private final Unit slopeUnit;
  private final boolean mil;

  CurveReport(PrintWriter out, CurveResult result, Unit gapUnit) {
    this.out = out;
    this.result = result;
    this.profile = result.profile();
    this.gapUnit = gapUnit;
    this.mil = gapUnit == Unit.MIL;
    this.slopeUnit = mil ? Unit.MILLIVOLT_PER_MIL : Unit.MILLIVOLT_PER_MICROMETRE;
  }

  void print(List<String> asked) {
    out.println(Text.capital(result.verdict().label()) + " to " + profile.code());
    out.println();
    heading();
    result.runs().forEach(this::table);
    values();
    findings(asked);
  }

  private void heading() {
    line("Profile", profile.name() + " (" + basis() + ", version " + profile.version() + ")");
    line("Readings at", result.grid().toString());
    line(
        "ISF limits",
        slope(profile.isfLowest())
            + " to "
            + slope(profile.isfHighest())
            + " (±"
            + profile.isfTolerancePercent().toPlainString()
            + " % of "
            + profile.nominal()
            + ")");
    line("DSL limit", "±" + gap(profile.dslLimitMicrometres()));
  }

  private String basis() {
    return profile.edition().isEmpty()
        ? profile.source()
        : profile.source() + ", " + profile.edition();
  }

  private void table(RunResult run) {
    out.println();
    out.println(Text.capital(run.run().label()) + " run: " + run.verdict().label());
    out.printf(
        Locale.ROOT,
        "%12s %10s %14s %14s%n",
        "gap, " + gapUnit.symbol(),
        "output, V",
        "ISF, " + slopeUnit.symbol(),
        "deviation, " + gapUnit.symbol());
    run.points().forEach(this::row);
  }

  private void row(CurvePoint point) {
    String isf =
        point.isf().isPresent()
            ? number(slopeUnit.fromCanonical(point.isf().getAsDouble()), mil ? 1 : 3)
            : NOTHING;
    out.printf(
        Locale.ROOT,
        "%12s %10.3f %14s %14s%s%n",
        number(gapUnit.fromCanonical(point.gapMicrometres()), mil ? 2 : 1),
        point.volts(),
        isf,
        number(gapUnit.fromCanonical(point.deviationMicrometres()), mil ? 3 : 1),
        point.judged() ? "" : "  not judged");
  }

  private void values() {
    out.println();
    if (result.runs().size() > 1) {
      out.println("Of the worse run, " + result.worse().run().label() + ":");
    }
    line("ISF", result.isfVerdict().label());
    line("DSL", result.dslVerdict().label() + ", largest " + gap(result.maxDsl()));
    line("ASF", slope(result.asf()));
    line(
        "Least squares",
        slope(result.leastSquaresSlope())
            + ", standard error "
            + slope(result.leastSquaresSlopeStandardError()));
    line("Linear range", result.linearRange().map(this::range).orElse("none"));
    line(
        "Mid-range",
        gap(result.midRangeGapMicrometres())
            + (result.midRangeVolts().isPresent()
                ? String.format(Locale.ROOT, ", %.2f V", result.midRangeVolts().getAsDouble())
                : "")
            + " (guidance)");
    line(
        "ISF along gap",
        result
            .isfTrend()
            .map(
                trend ->
                    trend.direction().label()
                        + String.format(
                            Locale.ROOT,
                            ", %+.1f %% of nominal (p = %.2g)",
                            trend.changePercent(),
                            trend.significance()))
            .orElse("too few increments to tell"));
  }

  private void findings(List<String> asked) {
    if (asked.isEmpty() && result.findings().isEmpty()) {
      return;
    }
    out.println();
    out.println("Findings");
    asked.forEach(sentence -> out.println("- " + sentence));
    result.findings().stream()
        .map(Finding::sentence)
        .forEach(sentence -> out.println("- " + sentence));
  }

  private void line(String name, String text) {
    out.printf(Locale.ROOT, "%-14s %s%n", name, text);
  }

  private String range(GapRange range) {
    return gap(range.fromMicrometres()) + " to " + gap(range.toMicrometres());
  }

  private String gap(double micrometres) {
    return number(gapUnit.fromCanonical(micrometres), mil ? 2 : 1) + " " + gapUnit.symbol();
  }

  private String slope(double millivoltsPerMicrometre) {
    return number(slopeUnit.fromCanonical(millivoltsPerMicrometre), mil ? 1 : 3)
        + " "
        + slopeUnit.symbol();
  }

  private static String number(double number, int decimals) {
    return String.format(Locale.ROOT, "%." + decimals + "f", number);
  }
}
