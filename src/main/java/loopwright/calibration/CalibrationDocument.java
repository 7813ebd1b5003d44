package loopwright.calibration;

import java.util.List;
import loopwright.curve.CurveReading;
import loopwright.register.Component;
import loopwright.units.Reported;
import org.jspecify.annotations.Nullable;

/**
 * A calibration as {@code /api} answers it.
 *
 * @param loop tag of the point it was taken at; null for a bench set
 * @param measuredAt as ISO 8601 in UTC
 * @param verdict {@code conforms}, {@code does not conform} or {@code no curve}
 * @param parts it belongs to, in chain order
 * @param setup how the parts stood; empty for those fitted at the loop
 * @param temperature at the probe, as typed with its unit; null where nobody wrote it down
 * @param targetRunOut peak to peak, in the same way
 * @param readings as typed
 * @param analysis the curve judged by the profile version that judged it then; null without one,
 *     and in lists
 */
record CalibrationDocument(
    String number,
    @Nullable String loop,
    String setup,
    String stage,
    String measuredAt,
    String performedBy,
    String zero,
    String targetAlloy,
    @Nullable String temperature,
    @Nullable String targetRunOut,
    String procedure,
    String verdict,
    @Nullable String noCurveReason,
    String enteredBy,
    String enteredAt,
    String reason,
    List<Part> parts,
    List<Reading> readings,
    @Nullable CurveDocument analysis) {

  /** A part by the register's number. */
  record Part(long part, String kind, String label) {
    static Part of(Component component) {
      return new Part(component.id().number(), component.kind().word(), component.label());
    }
  }

  /** As typed: {@code 50}, {@code mil}, {@code -10.00}, {@code V}. */
  record Reading(String run, String gap, String gapUnit, String output, String outputUnit) {
    static Reading of(CurveReading reading) {
      return new Reading(
          reading.run().label(),
          reading.gap().typed(),
          reading.gap().unit().symbol(),
          reading.output().typed(),
          reading.output().unit().symbol());
    }
  }

  static CalibrationDocument of(
      Calibrated c,
      Conditions under,
      List<Part> parts,
      List<Reading> readings,
      @Nullable CurveDocument analysis) {
    return new CalibrationDocument(
        c.number(),
        c.tag(),
        c.setup().shown(),
        c.stage().word(),
        c.measuredAt().toString(),
        c.performedBy(),
        c.zero(),
        c.targetAlloy(),
        under.temperature().map(Reported::toString).orElse(null),
        under.runOut().map(Reported::toString).orElse(null),
        under.procedure(),
        c.outcome(),
        c.noCurveReason(),
        c.enteredBy(),
        c.enteredAt().toString(),
        c.reason(),
        parts,
        readings,
        analysis);
  }
}
