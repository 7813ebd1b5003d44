package loopwright.calibration;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.curve.Curve;
import loopwright.curve.CurveAnalysis;
import loopwright.curve.CurveCheck;
import loopwright.curve.CurveEntry;
import loopwright.curve.CurveReading;
import loopwright.curve.CurveResult;
import loopwright.curve.Remark;
import loopwright.problem.Refused;
import loopwright.register.ToleranceProfiles;
import loopwright.standard.Standard;
import loopwright.web.Form;
import loopwright.web.UnitsShown;

/** What one form holds of a curve, checked once: for the page while one types, and for keeping. */
final class TypedCurve {
  private static final String LOOK_AGAIN = "Look at what is asked above; tick here to keep it so.";

  private final Form form;
  private final CurveForm typed;
  private final Optional<ToleranceProfiles.Stored> profile;
  private final Optional<CurveEntry> entry;
  private final Optional<CurveCheck> check;
  private final ChosenStandards standards;
  private final Conditions conditions;
  private final List<String> questions = new ArrayList<>();

  private TypedCurve(
      Form form, Optional<ToleranceProfiles.Stored> profile, List<Standard> standards) {
    this.form = form;
    this.typed = new CurveForm(form);
    this.profile = profile;
    this.entry = typed.anythingTyped() ? typed.entry() : Optional.empty();
    this.check = entry.flatMap(this::checked);
    check.ifPresent(
        c -> c.questions().forEach(question -> questions.add(question.sentenceWithRow())));
    this.standards = ChosenStandards.of(form, standards);
    check.ifPresent(c -> questions.addAll(this.standards.questions(readings(c))));
    this.conditions = typed.conditions();
    profile
        .filter(chosen -> !typed.noCurve())
        .flatMap(chosen -> TemperatureRemark.of(conditions, chosen))
        .ifPresent(said -> questions.add(said + " Choose a profile for it, or keep it judged so?"));
  }

  private static List<CurveReading> readings(CurveCheck check) {
    return check.curve().map(Curve::readings).orElse(List.of());
  }

  /**
   * @param profile the one chosen in the form, if there is such a one
   * @param standards all reference standards there are to choose from
   */
  static TypedCurve of(
      Form form, Optional<ToleranceProfiles.Stored> profile, List<Standard> standards) {
    return new TypedCurve(form, profile, standards);
  }

  private Optional<CurveCheck> checked(CurveEntry cells) {
    return typed.noCurve() || profile.isEmpty()
        ? Optional.of(CurveCheck.withoutCurve(cells))
        : profile.map(p -> CurveCheck.toKeep(cells, p.profile()));
  }

  /** Says so at its field when readings wait for a profile to judge them. */
  void needProfile() {
    if (profile.isEmpty() && !typed.noCurve() && typed.anythingTyped()) {
      form.complain("profile", "Choose the profile that judges this curve.");
    }
  }

  Form form() {
    return form;
  }

  List<CurveForm.TypedRow> rows() {
    return typed.rows();
  }

  /** What is wrong in that row, in one line. */
  String complaint(int row) {
    return remarks()
        .filter(remark -> remark.row() == row)
        .map(Remark::sentence)
        .collect(Collectors.joining(" "));
  }

  /** What is wrong with the readings, by row. */
  List<String> complaints() {
    return remarks().map(Remark::sentenceWithRow).toList();
  }

  private Stream<Remark> remarks() {
    return check.stream().flatMap(c -> c.complaints().stream());
  }

  /** What is asked back before it is kept. */
  List<String> questions() {
    return List.copyOf(questions);
  }

  /** Asks one more thing back, and so keeps nothing this time. */
  void ask(String question) {
    questions.add(question);
    form.complain("confirmed", LOOK_AGAIN);
  }

  boolean noCurve() {
    return typed.noCurve();
  }

  boolean confirmed() {
    return typed.confirmed();
  }

  Optional<CurveResults.Shown> shown(UnitsShown units) {
    return check
        .flatMap(CurveCheck::curve)
        .flatMap(curve -> profile.map(p -> shown(curve, p, units)));
  }

  private CurveResults.Shown shown(
      Curve curve, ToleranceProfiles.Stored judgedBy, UnitsShown units) {
    CurveResult result = CurveAnalysis.of(curve, judgedBy.profile());
    CurveResults.Shown shown = CurveResults.of(result, curve.gapUnit(), units, "typed", "");
    return standards.used().isEmpty()
        ? shown
        : shown.with(
            UncertaintyShown.of(
                curve, result, judgedBy.terms(), standards.used(), conditions, units));
  }

  /** The calibration to keep; empty when the form was complained of. */
  Optional<NewCalibration> fresh(TakenWith with, ZoneId zone, Instant now) {
    Stage stage = typed.stage();
    Optional<Instant> at = typed.measuredAt(zone, now);
    String by = typed.performedBy();
    Zero zero = typed.zero();
    String alloy = typed.alloy();
    if (with.setup() == Setup.BENCH && alloy.isEmpty()) {
      form.complain("alloy", Refused.say(CalibrationProblem.TARGET_NEEDED));
    }
    typed.scales();
    Optional<NewCalibration.Outcome> outcome = typed.noCurve() ? withoutCurve() : measured();
    complaints().forEach(form::complain);
    standards.complaints().forEach(said -> form.complain(ChosenStandards.FIELD, said));
    return form.ok() && at.isPresent()
        ? outcome.map(
            o ->
                new NewCalibration(
                    with,
                    stage,
                    at.get(),
                    by,
                    zero,
                    alloy,
                    o,
                    "entered",
                    standards.certificates(),
                    conditions))
        : Optional.empty();
  }

  private Optional<NewCalibration.Outcome> withoutCurve() {
    String reason = typed.noCurveReason();
    return form.complaint("no-curve-reason") == null
        ? Optional.of(
            new NewCalibration.NoCurve(
                reason, entry.map(cells -> CurveCheck.alone(cells).readings()).orElse(List.of())))
        : Optional.empty();
  }

  private Optional<NewCalibration.Outcome> measured() {
    needProfile();
    if (!typed.anythingTyped()) {
      form.complain(CurveCheck.nothing().sentenceWithRow());
    }
    if (!questions.isEmpty() && !confirmed()) {
      form.complain("confirmed", LOOK_AGAIN);
    }
    Optional<Curve> curve = check.flatMap(CurveCheck::curve);
    return curve.flatMap(
        c -> profile.map(p -> new NewCalibration.Measured(c, p.version(), p.profile())));
  }
}
