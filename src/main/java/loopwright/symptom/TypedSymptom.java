package loopwright.symptom;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import loopwright.cause.Baseline;
import loopwright.cause.CauseFinder;
import loopwright.cause.CauseProblem;
import loopwright.cause.Diagnosis;
import loopwright.cause.FittedLengths;
import loopwright.cause.GivenBaseline;
import loopwright.cause.GivenCurve;
import loopwright.cause.LengthLaw;
import loopwright.cause.Observation;
import loopwright.cause.Situation;
import loopwright.cause.TappingPoint;
import loopwright.cause.Typed;
import loopwright.cause.Weights;
import loopwright.problem.Refused;
import loopwright.units.Length;
import loopwright.units.Unit;
import loopwright.web.Form;
import org.jspecify.annotations.Nullable;

/** Reads the page's fields; whatever can't be meant is complained of at its field. */
final class TypedSymptom {
  static final String CURVE = "curve";
  static final String LINE = "line";
  static final List<Unit> GAPS = List.of(Unit.MICROMETRE, Unit.MIL);
  static final List<Unit> SENSITIVITIES =
      List.of(Unit.MILLIVOLT_PER_MICROMETRE, Unit.MILLIVOLT_PER_MIL);

  private final Form form;
  private final Optional<LoopOnRecord.LastCurve> last;
  private final LengthLaw law;
  private final Weights weights;

  TypedSymptom(Form form, Optional<LoopOnRecord.LastCurve> last, LengthLaw law, Weights weights) {
    this.form = form;
    this.last = last;
    this.law = law;
    this.weights = weights;
  }

  /** Lengths as typed beside what was found. */
  record Found(Diagnosis diagnosis, FittedLengths lengths) {}

  /** Empty when a field was complained of. */
  Optional<Found> find() {
    @Nullable Length system =
        needed(
            "system-length",
            "Tuned for",
            Unit.METRE,
            "metres, for instance 5.0",
            Typed::systemLength);
    @Nullable FittedLengths lengths = system == null ? null : lengths(system);
    @Nullable Baseline baseline = baseline();
    @Nullable Observation seen = seen();
    if (baseline != null && seen != null) {
      form.read(
          "sensitivity",
          text ->
              notMixedUp(baseline, seen, typed("sensitivity", "Sensitivity now", SENSITIVITIES)));
    }
    Typed ofSensitivity = typed("sensitivity-gap", "Gap of the sensitivity", GAPS);
    Optional<Double> other = optional("sensitivity-gap", ofSensitivity, Typed::gapMicrometres);
    if (baseline != null && seen != null && other.isPresent()) {
      form.read("sensitivity-gap", text -> oneGap(baseline, seen, ofSensitivity));
    }
    if (!form.chosen("together", "yes")) {
      form.complain("together", new Refused(CauseProblem.TWO_PLACES).getMessage());
    }
    return form.ok() && system != null && lengths != null && baseline != null && seen != null
        ? Optional.ofNullable(
                form.read(
                    "volts", text -> CauseFinder.find(situation(system, lengths, baseline, seen))))
            .map(diagnosis -> new Found(diagnosis, lengths))
        : Optional.empty();
  }

  private Situation situation(
      Length system, FittedLengths lengths, Baseline baseline, Observation seen) {
    return new Situation(system, lengths.metres(), baseline, seen, law, weights.at(seen.at()));
  }

  private static boolean notMixedUp(Baseline baseline, Observation seen, Typed sensitivity) {
    GivenBaseline.refuseMixedUnits(baseline, seen.volts(), sensitivity);
    return true;
  }

  private static boolean oneGap(Baseline baseline, Observation seen, Typed ofSensitivity) {
    seen.gapMicrometres()
        .ifPresent(gap -> GivenBaseline.refuseTwoGaps(baseline, gap, ofSensitivity));
    return true;
  }

  private @Nullable FittedLengths lengths(Length system) {
    return form.typed("lengths").isBlank()
        ? FittedLengths.usual(system)
        : form.read("lengths", text -> FittedLengths.read("Lengths", text, system));
  }

  private @Nullable Baseline baseline() {
    return form.chosen("baseline", CURVE) && last.isPresent() ? curve(last.get()) : line();
  }

  private @Nullable Baseline curve(LoopOnRecord.LastCurve as) {
    Optional<Typed> gap =
        form.typed("baseline-gap").isBlank()
            ? Optional.empty()
            : Optional.of(typed("baseline-gap", "Gap it was set to", GAPS));
    return form.read(
        "baseline-gap",
        text -> GivenBaseline.curve(GivenCurve.of(as.name(), as.curve()), gap, Optional.empty()));
  }

  private @Nullable Baseline line() {
    Typed gap = typed("baseline-gap", "Gap it was set to", GAPS);
    Typed volts = typed("baseline-volts", "Volts then", List.of(Unit.VOLT));
    Typed sensitivity = typed("baseline-sensitivity", "Sensitivity then", SENSITIVITIES);
    @Nullable Double at =
        needed(gap, "baseline-gap", "the gap of the last good record", Typed::gapMicrometres);
    @Nullable Double v =
        needed(volts, "baseline-volts", "the volts at that gap", Typed::baselineVolts);
    @Nullable Double s =
        needed(
            sensitivity, "baseline-sensitivity", "the sensitivity at that gap", Typed::sensitivity);
    return at == null || v == null || s == null
        ? null
        : form.read("baseline-sensitivity", text -> GivenBaseline.line(gap, volts, sensitivity));
  }

  private @Nullable Observation seen() {
    @Nullable Double volts =
        needed(
            "volts",
            "Gap voltage now",
            Unit.VOLT,
            "the volts as measured, for instance -9.0",
            Typed::volts);
    @Nullable Double sensitivity = sensitivity();
    Optional<Double> gap = optional("gap", typed("gap", "Gap now", GAPS), Typed::gapMicrometres);
    Optional<Double> uVolts =
        optional(
            "u-volts",
            typed("u-volts", "Of the volts", List.of(Unit.VOLT)),
            Typed::voltsUncertainty);
    Optional<Double> uSensitivity =
        optional(
            "u-sensitivity",
            typed("u-sensitivity", "Of the sensitivity", SENSITIVITIES),
            Typed::relativeUncertainty);
    Optional<TappingPoint> at =
        optional("measured-at", typed("measured-at", "Taken at", List.of(Unit.VOLT)), Typed::place);
    return volts == null || sensitivity == null || !form.ok()
        ? null
        : new Observation(
            volts,
            sensitivity,
            uVolts.orElse(Observation.USUAL_VOLTS),
            uSensitivity.orElse(Observation.USUAL_SENSITIVITY),
            gap.map(OptionalDouble::of).orElse(OptionalDouble.empty()),
            Optional.empty(),
            at.orElse(TappingPoint.DRIVER));
  }

  private @Nullable Double sensitivity() {
    Typed typed = typed("sensitivity", "Sensitivity now", SENSITIVITIES);
    return form.read(
        "sensitivity",
        text -> {
          if (text.isBlank()) {
            throw new Refused(CauseProblem.SENSITIVITY_MISSING, typed.name(), "it");
          }
          return typed.sensitivity();
        });
  }

  private Typed typed(String field, String label, List<Unit> units) {
    @Nullable Unit unit = form.usualUnit(field + "-unit", units);
    return new Typed(label, form.typed(field), unit == null ? units.get(0) : unit);
  }

  private <T> @Nullable T needed(
      String field, String label, Unit unit, String remedy, Reading<T> reading) {
    return needed(typed(field, label, List.of(unit)), field, remedy, reading);
  }

  private <T> @Nullable T needed(Typed typed, String field, String remedy, Reading<T> reading) {
    return form.read(
        field,
        text -> {
          if (text.isBlank()) {
            throw new Refused(CauseProblem.MISSING, typed.name(), remedy);
          }
          return reading.of(typed);
        });
  }

  private <T> Optional<T> optional(String field, Typed typed, Reading<T> reading) {
    return form.optional(field, text -> reading.of(typed));
  }

  /** One way to read what was typed. */
  private interface Reading<T> {
    T of(Typed typed);
  }
}
