package loopwright.cause;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/** What must be known before anybody acts on a diagnosis. */
final class Cautions {
  private static final double NOTABLE = 0.3;
  private static final double TOLERANCE = 0.05;
  private static final double CLOSE = 0.2;
  private static final double FITS_NOTHING = 1e-4;

  private final Diagnosis diagnosis;
  private final Situation situation;
  private final List<String> all = new ArrayList<>();

  private Cautions(Diagnosis diagnosis) {
    this.diagnosis = diagnosis;
    this.situation = diagnosis.situation();
  }

  static List<String> of(Diagnosis diagnosis) {
    Cautions cautions = new Cautions(diagnosis);
    cautions.sensitivity();
    cautions.hiddenGap();
    cautions.beyond();
    cautions.undecided();
    cautions.lengths();
    cautions.basis();
    cautions.curve();
    return cautions.all;
  }

  /** After API Std 670, ± 5 % of each increment at 0 to 45 °C (from memory). */
  private void sensitivity() {
    double change = situation.seen().sensitivity() / situation.baseline().setSensitivity() - 1;
    if (Math.abs(change) > TOLERANCE) {
      all.add(
          "The sensitivity is "
              + Math.round(100 * Math.abs(change))
              + " % "
              + (change < 0 ? "below" : "above")
              + " the baseline's, outside the usual ±5 % (after API Std 670, from memory): whatever the cause, vibration is "
              + (change < 0
                  ? "under-read and alarms act late."
                  : "over-read and alarms act early."));
    }
  }

  private void hiddenGap() {
    double over = regapped(Cause.OVER_LENGTH);
    double under = regapped(Cause.UNDER_LENGTH);
    if (over > NOTABLE) {
      all.add(
          "The gap voltage looks right, but the probe probably stands farther away than it was set."
              + " Don't move it again before the length is proved.");
    }
    if (under > NOTABLE) {
      all.add(
          "The gap voltage looks right, but the probe probably stands nearer than it was set: the tip"
              + " may be rubbed. Don't move it before the length is proved.");
    }
  }

  private double regapped(Cause cause) {
    return diagnosis.causes().stream()
        .filter(ranked -> ranked.cause() == cause && ranked.regapped())
        .mapToDouble(RankedCause::probability)
        .sum();
  }

  private void beyond() {
    double beyond =
        Math.max(diagnosis.probability(Cause.BEYOND_MODEL), diagnosis.impliedLength().beyond());
    if (beyond > CLOSE) {
      all.add(
          "Beyond the model: the total length may be off by more than a quarter of the system length"
              + ". Take the direction as a hint and the length as unknown.");
    }
    if (diagnosis.evidence() < FITS_NOTHING) {
      all.add(
          "No cause explains these two numbers well. Were volts and sensitivity taken at the same"
              + " gap and the same place, and in these units?");
    }
  }

  private void undecided() {
    RankedCause first = diagnosis.first();
    if (first.probability() < 0.5 && diagnosis.causes().size() > 1) {
      all.add(
          "The numbers don't tell one cause from another; "
              + first.cause().label()
              + " and "
              + diagnosis.causes().get(1).cause().label()
              + " lead. The next measurement decides, not this list.");
    }
  }

  private void lengths() {
    List<Map.Entry<BigDecimal, Double>> wrong =
        diagnosis.lengthProbabilities().entrySet().stream()
            .filter(entry -> entry.getKey().compareTo(situation.systemLength().metres()) != 0)
            .sorted(Map.Entry.<BigDecimal, Double>comparingByValue(Comparator.reverseOrder()))
            .limit(2)
            .toList();
    if (wrong.size() == 2
        && wrong.get(0).getValue() > CLOSE
        && wrong.get(1).getValue() > CLOSE * wrong.get(0).getValue()) {
      all.add(
          wrong.get(0).getKey().toPlainString()
              + " m and "
              + wrong.get(1).getKey().toPlainString()
              + " m stay close together; the marking or the capacitance of the cable decides.");
    }
  }

  private void basis() {
    if (situation.baseline().isStated()) {
      all.add(
          "The baseline is a nominal line, not this loop's own readings: a loop may lie some per cent"
              + " beside it, which makes the answer less sure.");
    }
    if (situation.seen().at() != TappingPoint.DRIVER) {
      all.add(
          "Taken at the "
              + situation.seen().at().label()
              + ": barrier, wiring and meter can change both numbers. Taken again at the driver's"
              + " terminals they say more.");
    }
  }

  private void curve() {
    situation
        .seen()
        .curve()
        .flatMap(present -> present.disagreement(situation.seen()))
        .ifPresent(all::add);
  }
}
