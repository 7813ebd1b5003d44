package loopwright.calibration;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import loopwright.curve.Curve;
import loopwright.curve.CurveAnalysis;
import loopwright.curve.CurveReading;
import loopwright.curve.CurveResult;
import loopwright.register.ToleranceProfiles;
import loopwright.standard.StandardUsed;
import loopwright.standard.Standards;
import loopwright.uncertainty.Budget;
import loopwright.uncertainty.CurveUncertainty;
import loopwright.uncertainty.RunUncertainty;
import org.jooq.DSLContext;

/**
 * A calibration with all that can be worked out from it, under the version that judged it.
 *
 * @param readings as typed, also where there is no curve
 * @param judgedBy empty without a curve, like curve and result
 * @param uncertainty empty where none can be stated, then {@code missing} says why
 * @param used equipment under its certificates
 * @param notes to be said beside the uncertainty
 * @param hash SHA-256 of what signatures cover
 * @param conditions under which it was taken
 */
public record Evidence(
    Calibrated record,
    List<CurveReading> readings,
    Optional<ToleranceProfiles.Stored> judgedBy,
    Optional<Curve> curve,
    Optional<CurveResult> result,
    Optional<CurveUncertainty> uncertainty,
    String missing,
    List<String> notes,
    List<StandardUsed> used,
    String hash,
    Optional<Superseded> superseded,
    Conditions conditions) {

  /** That it was taken at a temperature for which its profile's limits don't hold. */
  public Optional<String> outsideTemperature() {
    return judgedBy.flatMap(profile -> TemperatureRemark.of(conditions, profile));
  }

  /**
   * Relative standard uncertainty of the curve's slope about a gap: that of the increment there, of
   * both runs the larger. Empty where none is stated or the gap lies beyond the readings.
   */
  public OptionalDouble slopeUncertaintyAt(double gapMicrometres) {
    return uncertainty.stream()
        .flatMap(stated -> stated.runs().stream())
        .flatMap(run -> increment(run.points(), gapMicrometres).stream())
        .mapToDouble(budget -> budget.standardUncertainty() / Math.abs(budget.estimate()))
        .max();
  }

  private static Optional<Budget> increment(
      List<RunUncertainty.PointUncertainty> points, double gap) {
    for (int i = 1; i < points.size(); i++) {
      double from = points.get(i - 1).point().gapMicrometres();
      double to = points.get(i).point().gapMicrometres();
      if (Math.min(from, to) <= gap && gap <= Math.max(from, to)) {
        return points.get(i).isf();
      }
    }
    return Optional.empty();
  }

  /** Puts evidence together. */
  public record Book(Calibrations calibrations, ToleranceProfiles profiles, Standards standards) {

    public Evidence of(DSLContext sql, Calibrated c) {
      Optional<Curve> curve = calibrations.curve(sql, c);
      Optional<ToleranceProfiles.Stored> judgedBy =
          Optional.ofNullable(c.profileVersion()).flatMap(v -> profiles.version(sql, v));
      Optional<CurveResult> result =
          curve.flatMap(each -> judgedBy.map(p -> CurveAnalysis.of(each, p.profile())));
      List<StandardUsed> used = standards.used(sql, calibrations.certificates(sql, c));
      Conditions under = calibrations.conditions(sql, c);
      EquipmentErrors errors =
          curve
              .map(each -> EquipmentErrors.of(each, used, under))
              .orElse(new EquipmentErrors(List.of(), "There is no curve.", List.of()));
      return new Evidence(
          c,
          calibrations.readings(sql, c),
          judgedBy,
          curve,
          result,
          uncertainty(result, judgedBy, errors),
          errors.missing(),
          notes(errors, curve, used),
          used,
          calibrations.contentHash(sql, c),
          calibrations.superseded(sql, c),
          under);
    }

    private static List<String> notes(
        EquipmentErrors errors, Optional<Curve> curve, List<StandardUsed> used) {
      boolean corrects = curve.filter(each -> EquipmentErrors.corrects(each, used)).isPresent();
      return corrects
          ? Stream.concat(
                  errors.notes().stream(),
                  Stream.of(
                      "Readings stand as typed, without the corrections of the certificates."))
              .toList()
          : errors.notes();
    }

    private static Optional<CurveUncertainty> uncertainty(
        Optional<CurveResult> result,
        Optional<ToleranceProfiles.Stored> judgedBy,
        EquipmentErrors errors) {
      return errors.sources().isEmpty()
          ? Optional.empty()
          : result.flatMap(
              r -> judgedBy.map(p -> CurveUncertainty.of(r, errors.sources(), p.terms().rule())));
    }
  }
}
