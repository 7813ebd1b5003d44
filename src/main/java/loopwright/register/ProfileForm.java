package loopwright.register;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.curve.Grid;
import loopwright.curve.ShiftRule;
import loopwright.curve.ToleranceProfile;
import loopwright.dynamic.ResponseBand;
import loopwright.problem.Text;
import loopwright.uncertainty.DecisionRule;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import loopwright.web.Form;

/** Reads the page on which a version of a tolerance profile is typed. */
final class ProfileForm {
  private static final String CODE = "[a-z0-9][a-z0-9-]{1,39}";
  private static final int MOST_POSITIONS = 60;
  private static final BigDecimal COLDEST = BigDecimal.valueOf(-200);
  private static final BigDecimal HOTTEST = BigDecimal.valueOf(500);
  private static final BigDecimal MOST_RISK = BigDecimal.valueOf(50);

  private final Form form;

  ProfileForm(Form form) {
    this.form = form;
  }

  /** What a version says, filled in to be changed. */
  static Form of(ToleranceProfiles.Stored stored) {
    ToleranceProfile profile = stored.profile();
    DecisionRule rule = stored.terms().rule();
    Form form =
        Form.of(
            Map.of(
                "source", profile.source(),
                "edition", profile.edition(),
                "slope", Numbers.plain(profile.nominal().declared()),
                "slope-unit", profile.nominal().unit().symbol(),
                "isf", Numbers.plain(profile.isfTolerancePercent()),
                "dsl", profile.dslLimit().typed(),
                "dsl-unit", profile.dslLimit().unit().symbol(),
                "shift", profile.shiftRule().name(),
                "rule", rule.kind().name()));
    if (rule.kind() == DecisionRule.Kind.RISK_LIMIT) {
      form.put("risk", ProfileTerms.percent(rule.riskLimit()));
    }
    if (stored.terms().reviewAsked()) {
      form.put("review", "yes");
    }
    profile.grids().forEach(grid -> put(form, grid));
    stored
        .terms()
        .temperatures()
        .ifPresent(
            range ->
                form.put("temperature-from", Numbers.plain(range.from()))
                    .put("temperature-to", Numbers.plain(range.to())));
    stored.terms().response().ifPresent(band -> BandForm.put(form, band));
    return form;
  }

  private static void put(Form form, Grid grid) {
    String unit = name(grid.unit());
    form.put("from-" + unit, Numbers.plain(grid.from()))
        .put("to-" + unit, Numbers.plain(grid.to()))
        .put("step-" + unit, Numbers.plain(grid.step()));
  }

  private static String name(Unit unit) {
    return unit == Unit.MIL ? "mil" : "um";
  }

  static Map<String, String> shifts() {
    Map<String, String> shifts = new LinkedHashMap<>();
    Arrays.stream(ShiftRule.values()).forEach(rule -> shifts.put(rule.name(), rule.label()));
    return shifts;
  }

  static Map<String, String> rules() {
    Map<String, String> rules = new LinkedHashMap<>();
    rules.put("SIMPLE", "simple acceptance");
    rules.put("GUARDED", "guarded by U");
    rules.put("RISK_LIMIT", "limit to the risk of a false decision");
    return rules;
  }

  String code() {
    return form.read(
        "code",
        typed -> {
          if (!typed.strip().matches(CODE)) {
            throw new IllegalArgumentException(
                "Give a code of 2 to 40 small letters, digits and hyphens, such as 2mm-own.");
          }
          return typed.strip();
        });
  }

  String name() {
    return form.read("name", typed -> Text.needed("the name", typed, 120));
  }

  /** The version; empty, and said at the fields, if something is wrong. */
  Optional<ToleranceProfile> read(String code, String name) {
    String source = form.read("source", typed -> Text.needed("the source", typed, 200));
    String edition = form.read("edition", typed -> Text.kept("the edition", typed, 60));
    Reported slope = form.measured("slope", Unit.MILLIVOLT_PER_MICROMETRE, Unit.MILLIVOLT_PER_MIL);
    BigDecimal isf = form.number("isf");
    Reported dsl = form.measured("dsl", Unit.MICROMETRE, Unit.MIL);
    ShiftRule shift = form.oneOf("shift", ShiftRule.class);
    List<Grid> grids = new ArrayList<>();
    grid(Unit.MICROMETRE).ifPresent(grids::add);
    grid(Unit.MIL).ifPresent(grids::add);
    if (form.ok() && grids.isEmpty()) {
      form.complain("from-um", "Give the gaps to read at, in µm, in mil, or both.");
    }
    if (form.ok()) {
      limits(slope, isf, dsl);
    }
    if (!form.ok()) {
      return Optional.empty();
    }
    ScaleFactor nominal = new ScaleFactor(slope.amount(), slope.unit());
    return Optional.of(
        new ToleranceProfile(code, name, 1, source, edition, nominal, isf, dsl, shift, grids));
  }

  private void limits(Reported slope, BigDecimal isf, Reported dsl) {
    if (slope.amount().signum() <= 0 || slope.amount().compareTo(BigDecimal.valueOf(10_000)) > 0) {
      form.complain("slope", "A scale factor lies above zero and below 10,000.");
    }
    if (isf.signum() <= 0 || isf.compareTo(BigDecimal.valueOf(50)) > 0) {
      form.complain("isf", "An ISF tolerance is more than 0 and at most 50 %.");
    }
    if (dsl.amount().signum() <= 0) {
      form.complain("dsl", "A DSL limit is a distance above zero.");
    }
    decimals("slope", slope.amount(), 6);
    decimals("isf", isf, 3);
  }

  /** What is kept with fewer decimals would be another limit than the one typed. */
  private void decimals(String field, BigDecimal number, int most) {
    if (number.stripTrailingZeros().scale() > most) {
      form.complain(field, "Give it with at most " + most + " decimals.");
    }
  }

  private Optional<Grid> grid(Unit unit) {
    String name = name(unit);
    List<String> fields = List.of("from-" + name, "to-" + name, "step-" + name);
    if (fields.stream().allMatch(field -> form.typed(field).isBlank())) {
      return Optional.empty();
    }
    List<BigDecimal> numbers = new ArrayList<>();
    fields.forEach(field -> numbers.add(form.number(field)));
    fields.stream()
        .filter(field -> form.complaint(field) == null)
        .forEach(field -> decimals(field, numbers.get(fields.indexOf(field)), 3));
    if (fields.stream().anyMatch(field -> form.complaint(field) != null)) {
      return Optional.empty();
    }
    try {
      Grid grid = new Grid(unit, numbers.get(0), numbers.get(1), numbers.get(2));
      if (grid.positions().size() > MOST_POSITIONS) {
        throw new IllegalArgumentException("That would be more than 60 gaps.");
      }
      return Optional.of(grid);
    } catch (IllegalArgumentException wrong) {
      form.complain(fields.get(2), String.valueOf(wrong.getMessage()));
      return Optional.empty();
    }
  }

  /** How it decides; meaningless when the form was complained of. */
  ProfileTerms terms() {
    DecisionRule.Kind kind = form.oneOf("rule", DecisionRule.Kind.class);
    boolean review = form.chosen("review", "yes");
    Optional<TemperatureRange> temperatures = temperatures();
    Optional<ResponseBand> response = new BandForm(form).read();
    if (kind == null) {
      return ProfileTerms.SIMPLE;
    }
    return new ProfileTerms(
        switch (kind) {
          case SIMPLE -> DecisionRule.simple();
          case GUARDED -> DecisionRule.guarded();
          case RISK_LIMIT -> risk();
        },
        review,
        temperatures,
        response);
  }

  private Optional<TemperatureRange> temperatures() {
    if (form.typed("temperature-from").isBlank() && form.typed("temperature-to").isBlank()) {
      return Optional.empty();
    }
    BigDecimal from = form.number("temperature-from");
    BigDecimal to = form.number("temperature-to");
    if (form.complaint("temperature-from") != null || form.complaint("temperature-to") != null) {
      return Optional.empty();
    }
    decimals("temperature-from", from, 2);
    decimals("temperature-to", to, 2);
    if (from.compareTo(COLDEST) < 0 || to.compareTo(HOTTEST) > 0) {
      form.complain("temperature-from", "Temperatures at a probe lie between −200 and 500 °C.");
      return Optional.empty();
    }
    try {
      return Optional.of(new TemperatureRange(from, to));
    } catch (IllegalArgumentException wrong) {
      form.complain("temperature-to", String.valueOf(wrong.getMessage()));
      return Optional.empty();
    }
  }

  private DecisionRule risk() {
    BigDecimal percent = form.number("risk");
    if (percent == null) {
      return DecisionRule.simple();
    }
    if (percent.signum() <= 0 || percent.compareTo(MOST_RISK) > 0) {
      form.complain("risk", "A risk limit lies above 0 and not above 50 %.");
      return DecisionRule.simple();
    }
    return DecisionRule.riskLimit(percent.movePointLeft(2).doubleValue());
  }
}
