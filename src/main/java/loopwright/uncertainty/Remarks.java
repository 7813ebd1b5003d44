package loopwright.uncertainty;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import loopwright.units.Unit;

/** Sentences about what the equipment can and can't prove. */
final class Remarks {
  private final List<String> sentences = new ArrayList<>();

  private Remarks() {}

  static List<String> about(CurveUncertainty uncertainty) {
    Remarks remarks = new Remarks();
    RunUncertainty run = uncertainty.worse();
    double slope = uncertainty.result().profile().slope();
    run.leastSureIsf().ifPresent(isf -> remarks.scaleFactor("ISF", isf, slope));
    remarks.scaleFactor("ASF", run.asf(), slope);
    remarks.deviation(run.maxDsl());
    remarks.sharedExtremes(run);
    return List.copyOf(remarks.sentences);
  }

  private void scaleFactor(String what, Statement statement, double slope) {
    if (statement.equipmentCanProve()) {
      return;
    }
    double percent = 100 * statement.budget().expandedUncertainty() / slope;
    double tolerance = 100 * statement.limits().tolerance() / slope;
    String left =
        percent < tolerance
            ? say(
                "only an %s within ±%.1f %% of nominal would be proved", what, tolerance - percent)
            : say("no %s would be proved, whatever its value", what);
    sentences.add(
        say(
            "This equipment cannot prove this tolerance: U(%s) is %.1f %% of nominal against"
                + " ±%.1f %%, so that %s.%s",
            what, percent, tolerance, left, biggest(statement.budget())));
  }

  private void deviation(Statement statement) {
    if (statement.equipmentCanProve()) {
      return;
    }
    double expanded = statement.budget().expandedUncertainty();
    double tolerance = statement.limits().tolerance();
    String left =
        expanded < tolerance
            ? say("only deviations up to %s would be proved", both(tolerance - expanded))
            : "no deviation would be proved, whatever its value";
    sentences.add(
        say(
            "This equipment cannot prove this tolerance: U(DSL) is %s against %s, so that %s.%s",
            both(expanded), both(tolerance), left, biggest(statement.budget())));
  }

  private void sharedExtremes(RunUncertainty run) {
    if (run.sharedExtremes() > 2) {
      sentences.add(
          say(
              "%d readings lie within U of the two that fix the largest deviation; its U is a"
                  + " linearisation there, and the Monte Carlo check is the better guide.",
              run.sharedExtremes()));
    }
  }

  private static String biggest(Budget budget) {
    return budget
        .biggest()
        .map(
            line ->
                say(
                    " Biggest contributor: %s (%.0f %% of the variance).",
                    line.name(), 100 * budget.share(line)))
        .orElse("");
  }

  private static String both(double micrometres) {
    return say("%.1f µm (%.2f mil)", micrometres, Unit.MIL.fromCanonical(micrometres));
  }

  private static String say(String sentence, Object... parts) {
    return String.format(Locale.ROOT, sentence, parts);
  }
}
