package loopwright.fieldcheck;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import loopwright.dynamic.Agreement;
import loopwright.dynamic.DynamicReading;
import loopwright.dynamic.StaticCurve;
import loopwright.matching.PartView;
import loopwright.uncertainty.Budget;
import loopwright.uncertainty.DynamicUncertainty;
import loopwright.uncertainty.ErrorSource;
import loopwright.uncertainty.Quantity;
import loopwright.uncertainty.Spread;

/** What a dynamic check says, and whether it agrees with the static curve. */
final class DynamicJudge {
  private static final double TOLERANCE_PERCENT = 5;

  private final Entries entries;
  private final Background background;
  private final DynamicReading reading;
  private final List<Said> said = new ArrayList<>();

  private DynamicJudge(Entries entries, Background background, DynamicReading reading) {
    this.entries = entries;
    this.background = background;
    this.reading = reading;
  }

  static List<Said> judge(Entries entries, Background background) {
    Optional<DynamicReading> reading = Sines.reading(entries);
    if (reading.isEmpty()) {
      return List.of();
    }
    DynamicJudge judge = new DynamicJudge(entries, background, reading.get());
    judge.sensitivity();
    judge.nominal();
    judge.curve();
    judge.monitor();
    return judge.said;
  }

  private void sensitivity() {
    String worth =
        budget(entries, reading)
            .map(
                budget ->
                    " ± %s (k = %s, 95 %%)"
                        .formatted(
                            Amounts.slope(budget.expandedUncertainty()),
                            Amounts.number("%.2f", budget.coverageFactor())))
            .orElse("");
    said.add(
        Said.only(
            "sensitivity",
            "%s%s at %s, with %s pk-pk (peak acceleration %s g)."
                .formatted(
                    Amounts.slope(reading.sensitivity()),
                    worth,
                    Amounts.hertz(reading.hertz()),
                    Amounts.gap(reading.micrometres()),
                    Amounts.number("%.2f", reading.peakGravities()))));
  }

  /** Where both relative uncertainties are given: JCGM 100, displacement and output independent. */
  static Optional<Budget> budget(Entries entries, DynamicReading reading) {
    Optional<Double> displacement = entries.amount("u-displacement");
    Optional<Double> output = entries.amount("u-output");
    if (displacement.isEmpty() || output.isEmpty()) {
      return Optional.empty();
    }
    List<ErrorSource> sources =
        List.of(
            ErrorSource.known("displacement", Quantity.GAP, Spread.SAME_SHARE, displacement.get()),
            ErrorSource.known("output", Quantity.VOLTS, Spread.SAME_SHARE, output.get()));
    return Optional.of(DynamicUncertainty.of(reading.micrometres(), reading.volts(), sources));
  }

  private void nominal() {
    background
        .view()
        .driver()
        .part()
        .map(PartView::scaleFactor)
        .ifPresent(
            nominal -> {
              double percent =
                  100 * (reading.sensitivity() / nominal.millivoltsPerMicrometre() - 1);
              said.add(
                  Said.judged(
                      Math.abs(percent) <= TOLERANCE_PERCENT * (1 + 1e-9),
                      "nominal",
                      "%s from the driver's %s."
                          .formatted(Amounts.number("%+.2f %%", percent), nominal),
                      "±5 % of nominal; common practice, no source"));
            });
  }

  private void curve() {
    if (background.curve().isEmpty()) {
      said.add(
          Said.only(
              "static curve", "There is no as-left curve of exactly these parts to compare with."));
      return;
    }
    Background.AsLeft asLeft = background.curve().get();
    OptionalDouble gap = gap(entries, asLeft.curve(), background.approvedGap());
    if (gap.isEmpty()) {
      said.add(
          Said.only(
              "static curve",
              "The gap voltage lies beyond the readings of " + asLeft.number() + "."));
      return;
    }
    double slope = asLeft.curve().slopeAt(gap.getAsDouble());
    String where = asLeft.number() + " at " + Amounts.gap(gap.getAsDouble());
    said.add(
        agreement(entries, reading, slope, asLeft.uncertaintyAt().apply(gap.getAsDouble()))
            .map(a -> compared(a, where))
            .orElseGet(() -> only(slope, where)));
  }

  /** Where the gap voltage says, else at the approved gap, else in the middle of the curve. */
  static OptionalDouble gap(Entries entries, StaticCurve curve, OptionalDouble approved) {
    Optional<Double> volts = entries.amount("gap-volts");
    if (volts.isPresent()) {
      return curve.gapAt(volts.get());
    }
    return approved.isPresent() && curve.reaches(approved.getAsDouble())
        ? approved
        : OptionalDouble.of(curve.middle());
  }

  private static Optional<Agreement> agreement(
      Entries entries, DynamicReading reading, double slope, OptionalDouble ofRecord) {
    Optional<Double> share =
        entries.amount("u-static").or(() -> ofRecord.stream().boxed().findFirst());
    return budget(entries, reading)
        .flatMap(
            budget ->
                share
                    .filter(u -> budget.standardUncertainty() + u > 0)
                    .map(
                        u ->
                            Agreement.of(
                                reading.sensitivity(),
                                budget.standardUncertainty(),
                                slope,
                                u * slope)));
  }

  private static Said compared(Agreement agreement, String where) {
    return Said.judged(
        agreement.agrees(),
        "static curve",
        "%s: %s from the slope of %s, %s; that is %s combined standard uncertainties."
            .formatted(
                agreement.agrees() ? "They agree" : "They don't agree",
                Amounts.number("%+.2f %%", agreement.percent()),
                where,
                Amounts.slope(agreement.fixed()),
                Amounts.number("%.1f", agreement.distance())),
        "2 combined standard uncertainties (JCGM 100:2008, 5.1.2); the limit is own choice");
  }

  private Said only(double slope, String where) {
    double percent = 100 * (reading.sensitivity() - slope) / slope;
    return Said.only(
        "static curve",
        ("%s from the slope of %s, %s. Whether they agree can't be said without the uncertainties"
                + " of both.")
            .formatted(Amounts.number("%+.2f %%", percent), where, Amounts.slope(slope)));
  }

  private void monitor() {
    entries
        .amount("shown")
        .ifPresent(
            shown ->
                said.add(
                    Said.only(
                        "monitor",
                        "It shows %s for %s: %s."
                            .formatted(
                                Amounts.gap(shown),
                                Amounts.gap(reading.micrometres()),
                                Amounts.number(
                                    "%+.1f %%", 100 * (shown / reading.micrometres() - 1))))));
  }
}
