package loopwright.family;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import loopwright.matching.Alloys;
import loopwright.matching.CableUse;
import loopwright.matching.Output;
import loopwright.matching.PartKind;
import loopwright.matching.Range;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.register.FamilyDetails;
import loopwright.register.LinearRange;
import loopwright.register.OfferedLength;
import loopwright.units.Length;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import loopwright.web.Form;
import org.jspecify.annotations.Nullable;

/** What is typed about a family, field by field, and back. */
final class FamilyForm {
  private static final Pattern LENGTH =
      Pattern.compile("([+−-]?[0-9.,]+)\\s*(m|ft)", Pattern.CASE_INSENSITIVE);
  private static final Map<String, PartKind> LISTS = new LinkedHashMap<>();

  static {
    LISTS.put("leads", PartKind.PROBE);
    LISTS.put("cables", PartKind.CABLE);
    LISTS.put("systems", PartKind.DRIVER);
  }

  private final Form form;
  private final Alloys alloys;
  private final @Nullable FamilyDetails was;

  /**
   * @param was before the change; null for a new family
   */
  FamilyForm(Form form, Alloys alloys, @Nullable FamilyDetails was) {
    this.form = form;
    this.alloys = alloys;
    this.was = was;
  }

  /** Empty when something was complained of. */
  Optional<FamilyDetails> read() {
    String code = form.text("code", 40);
    String name = form.text("name", 120);
    String maker = form.text("maker", 80);
    ScaleFactor scale = form.read("scale", this::scale);
    LinearRange range = range();
    Range output = new Range(number("output-low", "-23"), number("output-high", "-0.5"));
    List<OfferedLength> lengths = new ArrayList<>();
    LISTS.forEach((field, kind) -> lengths.addAll(lengths(field, kind)));
    Length tolerance = form.read("tolerance", this::tolerance);
    BigDecimal start = number("start", "-2");
    BigDecimal tip = number("tip", "8");
    String alloy = form.optional("alloy", this::alloy).orElse("");
    CableUse use =
        form.read("cable-use", word -> CableUse.named(word).orElseThrow(FamilyForm::chooseOne));
    if (!form.ok()) {
      return Optional.empty();
    }
    return Optional.ofNullable(
        this.<@Nullable FamilyDetails>attempt(
            () ->
                FamilyDetails.of(code, name, maker, scale)
                    .range(range)
                    .startVolts(start)
                    .tipMillimetres(tip)
                    .cableUse(use)
                    .twoCablesAllowed(form.chosen("two-cables", "yes"))
                    .lengthTolerance(tolerance)
                    .connectors(form.typed("connectors"))
                    .targetAlloy(alloy)
                    .output(form.typed("output").equals("mA") ? Output.CURRENT : Output.VOLTAGE)
                    .outputVolts(output)
                    .selectableSystemLength(form.chosen("selectable", "yes"))
                    .profile(form.typed("profile").isBlank() ? null : form.typed("profile"))
                    .note(form.typed("note").replace("\r\n", "\n"))
                    .lengths(lengths)
                    .build()));
  }

  private static IllegalArgumentException chooseOne() {
    return new IllegalArgumentException("Choose one from the list.");
  }

  private <T> @Nullable T attempt(java.util.function.Supplier<T> work) {
    try {
      return work.get();
    } catch (Refused refused) {
      form.complain(refused);
      return null;
    }
  }

  private ScaleFactor scale(String typed) {
    Unit unit =
        form.typed("scale-unit").equals(Unit.MILLIVOLT_PER_MICROMETRE.symbol())
            ? Unit.MILLIVOLT_PER_MICROMETRE
            : Unit.MILLIVOLT_PER_MIL;
    return new ScaleFactor(numberOf(typed, "200"), unit);
  }

  private LinearRange range() {
    Unit unit = form.typed("range-to-unit").equals("mil") ? Unit.MIL : Unit.MICROMETRE;
    Double from = micrometres("range-from", unit);
    Double to = micrometres("range-to", unit);
    LinearRange range = attempt("range-to", () -> new LinearRange(from, to));
    return range == null ? LinearRange.NOT_SAID : range;
  }

  private <T> @Nullable T attempt(String field, java.util.function.Supplier<T> work) {
    try {
      return work.get();
    } catch (Refused refused) {
      form.complain(field, refused.getMessage());
      return null;
    }
  }

  private @Nullable Double micrometres(String field, Unit unit) {
    BigDecimal typed = number(field, "250");
    return typed == null ? null : Double.valueOf(unit.toCanonical(typed).doubleValue());
  }

  private @Nullable BigDecimal number(String field, String example) {
    return form.optional(field, typed -> numberOf(typed, example)).orElse(null);
  }

  private static BigDecimal numberOf(String typed, String example) {
    return Numbers.read(typed)
        .orElseThrow(
            () -> new Refused(FamilyProblem.NOT_A_NUMBER, typed.strip(), "one number", example));
  }

  private List<OfferedLength> lengths(String field, PartKind kind) {
    return form.optional(field, typed -> lengths(kind, typed)).orElse(List.of());
  }

  private static List<OfferedLength> lengths(PartKind kind, String typed) {
    List<OfferedLength> lengths = new ArrayList<>();
    for (String line : typed.split("[\\n;]")) {
      if (!line.isBlank()) {
        Matcher length = LENGTH.matcher(line.strip());
        if (!length.matches() || Numbers.read(length.group(1)).isEmpty()) {
          throw new Refused(FamilyProblem.NOT_A_LENGTH, line.strip());
        }
        Unit unit = length.group(2).equalsIgnoreCase("ft") ? Unit.FOOT : Unit.METRE;
        lengths.add(OfferedLength.read(kind, length.group(1), unit));
      }
    }
    return lengths;
  }

  private Length tolerance(String typed) {
    Unit unit = form.typed("tolerance-unit").equals("ft") ? Unit.FOOT : Unit.METRE;
    return Length.of(
        Reported.read(typed, unit)
            .orElseThrow(
                () ->
                    new Refused(
                        FamilyProblem.NOT_A_NUMBER, typed.strip(), "the tolerance", "0.05")));
  }

  /** An alloy outside the groups that are kept is most often a slip; what was recorded may stay. */
  private String alloy(String typed) {
    String alloy = Text.kept("the target alloy", typed, 60);
    boolean stays = was != null && was.targetAlloy().equals(alloy);
    if (!stays && !alloys.isEmpty() && alloys.groupOf(alloy).isEmpty()) {
      throw new Refused(
          FamilyProblem.NO_GROUP,
          alloy,
          alloys.nearest(alloy).map(near -> " Did you mean " + near + "?").orElse(""));
    }
    return alloy;
  }

  /** The fields as they are recorded. */
  static Form of(FamilyDetails family, int version) {
    Map<String, String> fields = new HashMap<>();
    fields.put("code", family.code());
    fields.put("name", family.name());
    fields.put("maker", family.maker());
    fields.put("scale", Numbers.plain(family.scaleFactor().declared()));
    fields.put("scale-unit", family.scaleFactor().unit().symbol());
    fields.put("range-from", shown(family.range().fromMicrometres()));
    fields.put("range-to", shown(family.range().toMicrometres()));
    fields.put("range-to-unit", "µm");
    fields.put("start", shown(family.startVolts()));
    fields.put("output", family.output().unit());
    fields.put("output-low", shown(family.outputVolts().low()));
    fields.put("output-high", shown(family.outputVolts().high()));
    fields.put("tip", shown(family.tipMillimetres()));
    LISTS.forEach((field, kind) -> fields.put(field, lines(family, kind)));
    fields.put("tolerance", Numbers.plain(family.lengthTolerance().metres()));
    fields.put("tolerance-unit", "m");
    fields.put("cable-use", family.cableUse().word());
    fields.put("two-cables", family.twoCablesAllowed() ? "yes" : "");
    fields.put("selectable", family.selectableSystemLength() ? "yes" : "");
    fields.put("connectors", family.connectors());
    fields.put("alloy", family.targetAlloy());
    fields.put("profile", family.profile() == null ? "" : family.profile());
    fields.put("note", family.note());
    return Form.of(fields).at(Integer.toString(version));
  }

  private static String lines(FamilyDetails family, PartKind kind) {
    return family.lengthsOf(kind).stream()
        .map(offered -> offered.typed().toString())
        .collect(Collectors.joining("\n"));
  }

  private static String shown(@Nullable BigDecimal number) {
    return number == null ? "" : Numbers.plain(number);
  }

  private static String shown(@Nullable Double micrometres) {
    return micrometres == null ? "" : Numbers.plain(BigDecimal.valueOf(micrometres));
  }
}
