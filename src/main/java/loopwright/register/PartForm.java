package loopwright.register;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import loopwright.matching.Evidence;
import loopwright.matching.PartKind;
import loopwright.problem.Problem;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.time.SiteMoment;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.ScaleFactor;
import loopwright.units.Unit;
import loopwright.web.Form;
import org.jspecify.annotations.Nullable;

/** What is typed about a part, field by field, and back. */
final class PartForm {
  private static final Unit[] LENGTHS = {Unit.METRE, Unit.FOOT};
  private static final Unit[] SCALES = {Unit.MILLIVOLT_PER_MIL, Unit.MILLIVOLT_PER_MICROMETRE};

  private PartForm() {}

  /** What names the part; empty when something was complained of. */
  static Optional<ComponentDetails> details(Form form) {
    PartKind kind = form.read("kind", PartWords::kind);
    String maker = form.text("maker", 80);
    String model = form.text("model", 80);
    form.optional("serial", text -> Text.kept("the serial", text, 60));
    form.optional("shop-number", text -> Text.kept("the shop number", text, 60));
    form.optional("sensitivity", text -> Text.kept("the sensitivity", text, 40));
    form.optional("note", text -> Text.kept("the note", text, 1_000));
    Optional<BigDecimal> channels = form.optional("channels", PartForm::whole);
    Optional<LocalDate> due = form.typed("due").isBlank() ? Optional.empty() : dueOn(form);
    if (!form.ok()) {
      refuseNameless(form);
      return Optional.empty();
    }
    return attempt(
        form,
        () ->
            new ComponentDetails(
                kind,
                new PartIdentity(maker, model, form.typed("serial"), form.typed("shop-number")),
                channels.map(BigDecimal::intValue).orElse(1),
                form.typed("sensitivity"),
                due.orElse(null),
                form.typed("note")));
  }

  /** Told together with the other complaints, so that nobody corrects twice. */
  private static void refuseNameless(Form form) {
    if (form.typed("serial").isBlank() && form.typed("shop-number").isBlank()) {
      form.complain("serial", Refused.say(RegisterProblem.NO_NAME));
    }
  }

  private static Optional<LocalDate> dueOn(Form form) {
    return Optional.ofNullable(form.<@Nullable LocalDate>read("due", PartForm::day));
  }

  static LocalDate day(String typed) {
    try {
      return SiteMoment.isoDay(typed.strip());
    } catch (DateTimeException noDay) {
      throw new IllegalArgumentException(
          "“" + typed.strip() + "” is not a day. Give it such as 2027-05-31.", noDay);
    }
  }

  private static BigDecimal whole(String typed) {
    BigDecimal number = number(typed, "a whole number", "4");
    if (number.stripTrailingZeros().scale() > 0
        || number.abs().compareTo(BigDecimal.valueOf(99)) > 0) {
      throw new Refused(RegisterProblem.OUT_OF_RANGE, "The number of channels", typed, "1 to 16");
    }
    return number;
  }

  private static BigDecimal number(String typed, String what, String example) {
    return Numbers.read(typed)
        .orElseThrow(() -> new Refused(RegisterProblem.NOT_A_NUMBER, typed.strip(), what, example));
  }

  /** What is believed of it; condition and settings stay as {@code before} has them. */
  static Optional<ComponentFacts> facts(Form form, List<Family> known, ComponentFacts before) {
    Optional<Family> family = form.optional("family", code -> PartFilter.named(known, code));
    Optional<NominalLength> length = length(form);
    Optional<Reported> physical = physical(form);
    Optional<BigDecimal> tip =
        form.optional(
            "tip",
            typed -> {
              BigDecimal millimetres = number(typed, "a diameter in mm", "8");
              ComponentFacts.refuseImpossibleTip(millimetres);
              return millimetres;
            });
    Optional<ScaleFactor> scale = scale(form);
    Shelf shelf = shelf(form);
    if (!form.ok()) {
      return Optional.empty();
    }
    return Optional.of(
        before
            .withFamily(family.map(Family::id).orElse(null))
            .withLength(length.orElse(null))
            .withPhysicalLength(physical.orElse(null))
            .withTip(tip.orElse(null))
            .withScaleFactor(scale.orElse(null))
            .withShelf(shelf));
  }

  static Shelf shelf(Form form) {
    return new Shelf(
        form.optional("store", text -> Text.kept("the store", text, 60)).orElse(""),
        form.optional("bin", text -> Text.kept("the bin", text, 60)).orElse(""));
  }

  static Optional<NominalLength> length(Form form) {
    if (form.typed("length").isBlank()) {
      if (!form.typed("evidence").isBlank()) {
        form.complain("length", "Give the length that is known so, or leave both empty.");
      }
      return Optional.empty();
    }
    @Nullable Evidence evidence = form.read("evidence", PartWords::evidence);
    Reported typed = form.read("length", text -> possible(text, unit(form, "length", LENGTHS)));
    return evidence == null || typed == null
        ? Optional.empty()
        : Optional.of(new NominalLength(typed, evidence));
  }

  private static Reported possible(String text, Unit unit) {
    Reported typed = NominalLength.reported(text, unit);
    NominalLength.refuseImpossible(typed, NominalLength.MOST_METRES);
    return typed;
  }

  private static Optional<Reported> physical(Form form) {
    return form.optional(
        "physical",
        text -> {
          Reported typed = NominalLength.reported(text, unit(form, "physical", LENGTHS));
          NominalLength.refuseImpossible(typed, ComponentFacts.MOST_PHYSICAL_METRES);
          return typed;
        });
  }

  private static Optional<ScaleFactor> scale(Form form) {
    return form.optional(
        "scale",
        text -> {
          BigDecimal declared = number(text, "a scale factor", "200");
          ScaleFactor scale = new ScaleFactor(declared, unit(form, "scale", SCALES));
          ComponentFacts.refuseImpossibleScale(scale);
          return scale;
        });
  }

  private static Unit unit(Form form, String field, Unit... choices) {
    String symbol = form.typed(field + "-unit");
    for (Unit unit : choices) {
      if (unit.symbol().equals(symbol)) {
        return unit;
      }
    }
    throw new IllegalArgumentException(
        "Choose the unit: " + choices[0].symbol() + " or " + choices[1].symbol() + ".");
  }

  /** Why somebody does something: whoever reads it later will ask. */
  static String reason(String typed) {
    if (typed.isBlank()) {
      throw new Refused(RegisterProblem.REASON_NEEDED);
    }
    return Text.kept("the reason", typed, 400);
  }

  /** Runs it; what it refuses becomes a complaint of the field it concerns. */
  static <T> Optional<T> attempt(Form form, Supplier<T> work) {
    try {
      return Optional.of(work.get());
    } catch (Refused refused) {
      complain(form, refused);
      return Optional.empty();
    }
  }

  static void complain(Form form, Refused refused) {
    Problem problem = refused.problem();
    String field = problem instanceof RegisterProblem register ? register.field() : "";
    if (field.isEmpty()) {
      form.complain(refused);
    } else {
      form.complain(field, refused.getMessage() + " (" + problem.code() + ")");
    }
  }

  /** The fields as they are recorded now, as they were typed. */
  static Form of(Component part, @Nullable String family) {
    Map<String, String> fields = new HashMap<>();
    ComponentDetails details = part.details();
    fields.put("kind", details.kind().word());
    fields.put("maker", details.identity().maker());
    fields.put("model", details.identity().model());
    fields.put("serial", details.identity().serial());
    fields.put("shop-number", details.identity().shopNumber());
    fields.put("channels", Integer.toString(details.channels()));
    fields.put("sensitivity", details.sensitivity());
    fields.put("due", details.dueOn() == null ? "" : details.dueOn().toString());
    fields.put("note", details.note());
    fields.put("family", family == null ? "" : family);
    put(fields, part.facts());
    return Form.of(fields).at(Integer.toString(part.version()));
  }

  private static void put(Map<String, String> fields, ComponentFacts facts) {
    NominalLength length = facts.length();
    if (length != null) {
      put(fields, "length", length.typed());
      fields.put("evidence", length.evidence().word());
    }
    if (facts.physicalLength() != null) {
      put(fields, "physical", facts.physicalLength());
    }
    if (facts.tipMillimetres() != null) {
      fields.put("tip", Numbers.plain(facts.tipMillimetres()));
    }
    ScaleFactor scale = facts.scaleFactor();
    if (scale != null) {
      fields.put("scale", Numbers.plain(scale.declared()));
      fields.put("scale-unit", scale.unit().symbol());
    }
    fields.put("store", facts.shelf().store());
    fields.put("bin", facts.shelf().bin());
  }

  private static void put(Map<String, String> fields, String name, Reported typed) {
    fields.put(name, typed.typed());
    fields.put(name + "-unit", typed.unit().symbol());
  }
}
