package loopwright.calibration;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.curve.CurveReading;
import loopwright.problem.Refused;
import loopwright.standard.Standard;
import loopwright.standard.StandardKind;
import loopwright.standard.StandardProblem;
import loopwright.standard.StandardUsed;
import loopwright.time.SiteMoment;
import loopwright.units.Unit;
import loopwright.web.Form;

/** The reference standards named for a calibration, under their certificates of its day. */
public final class ChosenStandards {
  static final String FIELD = "standard";

  private final List<Standard> all;
  private final List<StandardUsed> used = new ArrayList<>();
  private final Map<String, String> unresolved = new LinkedHashMap<>();
  private final List<String> clashes = new ArrayList<>();
  private final Optional<LocalDate> day;

  private ChosenStandards(List<String> codes, Optional<LocalDate> day, List<Standard> all) {
    this.all = all;
    this.day = day;
    codes.stream().filter(code -> !code.isBlank()).distinct().forEach(this::choose);
    refuseTwoOfAKind(StandardKind.VOLTMETER);
    refuseTwoOfAKind(StandardKind.MICROMETER);
  }

  /** Those chosen in a form, on the day typed there. */
  static ChosenStandards of(Form form, List<Standard> all) {
    return new ChosenStandards(form.every(FIELD), day(form), all);
  }

  /**
   * Those named somewhere else.
   *
   * @param day of the calibration; empty while nobody knows, and then none is resolved
   */
  public static ChosenStandards named(
      List<String> codes, Optional<LocalDate> day, List<Standard> all) {
    return new ChosenStandards(codes, day, all);
  }

  private static Optional<LocalDate> day(Form form) {
    try {
      return Optional.of(SiteMoment.day(form.typed("on")));
    } catch (IllegalArgumentException saidAtItsField) {
      return Optional.empty();
    }
  }

  private void choose(String code) {
    Optional<Standard> found =
        all.stream().filter(s -> s.code().equalsIgnoreCase(code)).findFirst();
    if (found.isEmpty()) {
      unresolved.put(code, Refused.say(StandardProblem.NO_SUCH, code));
      return;
    }
    if (used.stream().anyMatch(u -> u.standard().id() == found.get().id())) {
      return;
    }
    try {
      day.ifPresent(on -> used.add(StandardUsed.on(on, found.get())));
    } catch (Refused noCertificate) {
      unresolved.put(code, noCertificate.getMessage());
    }
  }

  private void refuseTwoOfAKind(StandardKind kind) {
    List<String> codes =
        used.stream()
            .filter(u -> u.standard().kind() == kind)
            .map(u -> u.standard().code())
            .toList();
    if (codes.size() > 1) {
      clashes.add(
          Refused.say(CalibrationProblem.TWO_STANDARDS, kind.word(), String.join(", ", codes)));
    }
  }

  /** What can't be; empty when all is well. */
  List<String> complaints() {
    return Stream.concat(unresolved.values().stream(), clashes.stream()).toList();
  }

  /** Names that stand for no certificate of that day, each with why not. */
  public Map<String, String> unresolved() {
    return Collections.unmodifiableMap(unresolved);
  }

  /** Two of a sort of which only one can have been used. */
  public List<String> clashes() {
    return List.copyOf(clashes);
  }

  public List<StandardUsed> used() {
    return List.copyOf(used);
  }

  /** Numbers of their certificates. */
  public List<Long> certificates() {
    return used.stream().map(u -> u.certificate().id()).toList();
  }

  /** What is asked back before these readings are kept with this equipment. */
  public List<String> questions(List<CurveReading> readings) {
    List<String> questions = new ArrayList<>();
    for (StandardUsed each : used) {
      LocalDate on = day.orElseThrow();
      if (each.certificate().overdueOn(on)) {
        questions.add(
            "The certificate of %s was out of date on %s (due %s): signing will ask for a concession. Was it this one?"
                .formatted(each.standard().code(), on, each.certificate().dueOn()));
      }
      if (each.standard().unfitOn(on)) {
        questions.add(
            "%s was out of use, or had failed its check, on %s. Was it this one?"
                .formatted(each.standard().code(), on));
      }
      outside(each, readings).ifPresent(questions::add);
    }
    return questions;
  }

  private static Optional<String> outside(StandardUsed used, List<CurveReading> readings) {
    String values =
        readings.stream()
            .filter(reading -> !holds(used, reading))
            .map(reading -> typed(used, reading))
            .collect(Collectors.toCollection(TreeSet::new))
            .stream()
            .collect(Collectors.joining(", "));
    return values.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "Outside every range of the certificate of %s: %s. No uncertainty can be stated with it. Keep it so?"
                .formatted(used.standard().code(), values));
  }

  private static boolean holds(StandardUsed used, CurveReading reading) {
    return switch (used.standard().kind()) {
      case VOLTMETER -> used.certificate().rangeOf(Math.abs(reading.volts())).isPresent();
      case MICROMETER -> used.certificate().rangeOf(reading.gapMicrometres()).isPresent();
      case OTHER -> true;
    };
  }

  private static String typed(StandardUsed used, CurveReading reading) {
    return used.standard().kind().units().contains(Unit.VOLT)
        ? reading.output().toString()
        : reading.gap().toString();
  }

  /** One to choose: those in use, and those chosen already. */
  record Choice(String code, String words, boolean chosen) {}

  static List<Choice> choices(Form form, List<Standard> all) {
    return all.stream()
        .filter(s -> s.inUse() || form.chosen(FIELD, s.code()))
        .map(
            s ->
                new Choice(
                    s.code(),
                    s.kind().word()
                        + s.newest().map(c -> ", due " + c.dueOn()).orElse(", no certificate"),
                    form.chosen(FIELD, s.code())))
        .toList();
  }
}
