package loopwright.lengthlaw;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import loopwright.cause.GivenBaseline;
import loopwright.cause.LengthOutlook;
import loopwright.cause.Typed;
import loopwright.matching.Evidence;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.time.SiteMoment;
import loopwright.units.Length;
import loopwright.units.Unit;
import loopwright.web.Form;

/** Reads the page's fields; whatever can't be meant is complained of at its field. */
final class TypedEvidence {
  static final List<Unit> GAPS = List.of(Unit.MICROMETRE, Unit.MIL);
  static final List<Unit> SENSITIVITIES =
      List.of(Unit.MILLIVOLT_PER_MICROMETRE, Unit.MILLIVOLT_PER_MIL);
  private static final int LONGEST = 2000;
  private static final int LONGEST_TAG = 60;

  private final Form form;
  private final LocalDate today;

  TypedEvidence(Form form, LocalDate today) {
    this.form = form;
    this.today = today;
  }

  /** Empty when a field was complained of. */
  Optional<Taught> read() {
    LocalDate on = form.read("found-on", this::day);
    String tag = form.read("loop", text -> Text.kept("the tag", text, LONGEST_TAG));
    Length system = form.read("system-length", text -> length("Tuned for", text));
    Length fitted = form.read("true-length", text -> length("True length", text));
    Evidence known = form.oneOf("known-by", Evidence.class);
    Typed gap = typed("baseline-gap", "Gap it was set to", GAPS);
    Typed before = typed("baseline-volts", "Volts then", List.of(Unit.VOLT));
    Typed slope = typed("baseline-sensitivity", "Sensitivity then", SENSITIVITIES);
    Double atGap = form.read("baseline-gap", text -> gap.gapMicrometres());
    Double atVolts = form.read("baseline-volts", text -> before.baselineVolts());
    Double atSlope = form.read("baseline-sensitivity", text -> slope.sensitivity());
    Double volts =
        form.read(
            "volts", text -> typed("volts", "Gap voltage", List.of(Unit.VOLT)).baselineVolts());
    Typed seen = typed("sensitivity", "Sensitivity", SENSITIVITIES);
    Double sensitivity = form.read("sensitivity", text -> seen.sensitivity());
    String words = form.read("words", text -> Text.needed("what was looked at", text, LONGEST));
    if (!form.chosen("confirmed", "yes")) {
      form.complain(
          "confirmed", String.valueOf(new Refused(LawProblem.NOT_CONFIRMED).getMessage()));
    }
    if (!form.ok()) {
      return Optional.empty();
    }
    form.read("true-length", text -> wrong(system, fitted));
    form.read("baseline-sensitivity", text -> GivenBaseline.line(gap, before, slope));
    if (form.ok()) {
      form.read("sensitivity", text -> notMixedUp(gap, before, slope, volts, seen));
    }
    return form.ok()
        ? Optional.of(
            new Taught(
                on, tag, system, fitted, known, atGap, atVolts, atSlope, volts, sensitivity, words))
        : Optional.empty();
  }

  private LocalDate day(String typed) {
    LocalDate day = SiteMoment.day(typed);
    if (day.isAfter(today)) {
      throw new IllegalArgumentException("That day is in the future.");
    }
    return day;
  }

  private static Length length(String name, String text) {
    return new Typed(name, text, Unit.METRE).systemLength();
  }

  private static boolean wrong(Length system, Length fitted) {
    if (system.equals(fitted)) {
      throw new Refused(LawProblem.IN_BALANCE, fitted.inMetres());
    }
    if (!LengthOutlook.isWithinReach(
        system.metres().doubleValue(), fitted.metres().doubleValue())) {
      throw new Refused(LawProblem.BEYOND, fitted.inMetres(), system.inMetres());
    }
    return true;
  }

  private static boolean notMixedUp(
      Typed gap, Typed before, Typed slope, double volts, Typed seen) {
    GivenBaseline.refuseMixedUnits(GivenBaseline.line(gap, before, slope), volts, seen);
    return true;
  }

  private Typed typed(String field, String label, List<Unit> units) {
    Unit unit =
        units.stream()
            .filter(each -> each.symbol().equals(form.typed(field + "-unit")))
            .findFirst()
            .orElse(units.get(0));
    return new Typed(label, form.typed(field), unit);
  }
}
