package loopwright.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import loopwright.cause.Baseline;
import loopwright.cause.Diagnosis;
import loopwright.cause.FittedLengths;
import loopwright.cause.ImpliedLength;
import loopwright.cause.Observation;
import loopwright.cause.RankedCause;
import loopwright.cause.Told;

/** A diagnosis as lines for a terminal, rounded for reading. */
final class CauseReport {
  private static final double WORTH_TELLING = 0.01;
  private static final int MOST_CAUSES = 6;

  private final PrintWriter out;
  private final Diagnosis diagnosis;
  private final FittedLengths lengths;

  CauseReport(PrintWriter out, Diagnosis diagnosis, FittedLengths lengths) {
    this.out = out;
    this.diagnosis = diagnosis;
    this.lengths = lengths;
  }

  void print(List<String> remarks) {
    out.println("Likeliest: " + named(diagnosis.first()));
    out.println();
    numbers();
    causes();
    next();
    cautions(remarks);
  }

  private static String named(RankedCause cause) {
    return cause.inWords() + " (" + Told.percent(cause.probability()) + ")";
  }

  private void numbers() {
    Observation seen = diagnosis.situation().seen();
    Baseline baseline = diagnosis.situation().baseline();
    ImpliedLength implied = diagnosis.impliedLength();
    line(
        "Measured",
        Told.volts(seen.volts())
            + ", "
            + Told.sensitivity(seen.sensitivity())
            + ", at the "
            + seen.at().label());
    line(
        "Before",
        Told.volts(baseline.setVolts())
            + ", "
            + Told.sensitivity(baseline.setSensitivity())
            + ", at "
            + Told.gap(baseline.setGapMicrometres()));
    line(
        "Real gap",
        Told.gap(diagnosis.gapMicrometres())
            + String.format(
                Locale.ROOT, ", standard uncertainty %.0f µm", diagnosis.gapUncertainty()));
    line(
        "Total length",
        "if it is the length: "
            + Told.metres(implied.metres())
            + ", 95 %: "
            + Told.metres(implied.lowMetres())
            + " to "
            + Told.metres(implied.highMetres())
            + "; tuned for "
            + diagnosis.situation().systemLength());
    line("", likelihoods());
  }

  private String likelihoods() {
    StringBuilder text = new StringBuilder("likely fitted:");
    for (int i = 0; i < lengths.typed().size(); i++) {
      double probability =
          diagnosis.lengthProbabilities().getOrDefault(lengths.metres().get(i), 0.0);
      text.append(i == 0 ? " " : ", ")
          .append(lengths.typed().get(i))
          .append(" m ")
          .append(Told.percent(probability));
    }
    return text.toString();
  }

  private void causes() {
    out.println();
    out.println("Causes");
    diagnosis.causes().stream()
        .filter(cause -> cause.probability() >= WORTH_TELLING)
        .limit(MOST_CAUSES)
        .forEach(
            cause -> {
              out.println("- " + named(cause));
              out.println("  " + diagnosis.explain(cause));
            });
  }

  private void next() {
    out.println();
    out.println("Next");
    out.println("- " + diagnosis.next().measurement().sentence());
    diagnosis.advice().forEach(sentence -> out.println("- " + sentence));
  }

  private void cautions(List<String> remarks) {
    out.println();
    out.println("Mind");
    remarks.forEach(sentence -> out.println("- " + sentence));
    diagnosis.warnings().forEach(sentence -> out.println("- " + sentence));
    out.println(
        "- Volts and sensitivity must have been taken at the same gap and the same place;"
            + " otherwise this answer is worth nothing.");
    out.println("- " + Diagnosis.LIVE_PROTECTION);
    out.println();
    out.println("Basis");
    diagnosis.basis().forEach(sentence -> out.println("- " + sentence));
  }

  private void line(String name, String text) {
    out.printf(Locale.ROOT, "%-14s %s%n", name, text);
  }
}
