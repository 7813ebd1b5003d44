package loopwright.plant;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.register.Family;
import loopwright.register.FamilyId;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.Unit;
import loopwright.web.Form;
import org.jspecify.annotations.Nullable;

/** What is typed about a point, field by field, and back. */
final class PointForm {
  private PointForm() {}

  /** Empty when something was complained of. */
  static Optional<PointDetails> details(Form form, List<Family> families) {
    String tag = form.read("tag", text -> Text.needed("the tag", text, 60));
    PointKind kind =
        form.read("kind", word -> known(word, PointKind.named(word), "a kind of point", kinds()));
    Optional<FamilyId> family = form.optional("family", code -> family(families, code));
    Facing facing = facing(form);
    PhaseMark mark = mark(form);
    Surroundings around = surroundings(form);
    Optional<Reported> gap = form.optional("gap", text -> gap(form, text));
    Optional<Integer> interval = form.optional("interval", text -> whole(text, "months", 240));
    String place = text(form, "place", "the place", 120);
    String pair = text(form, "pair", "the tag of the pair", 60);
    Optional<PointState> state =
        form.optional(
            "state",
            word ->
                PointState.named(word)
                    .orElseThrow(
                        () ->
                            new Refused(
                                PlantProblem.UNKNOWN_WORD, word, "a state", "in use, retired")));
    if (!form.ok()) {
      return Optional.empty();
    }
    return attempt(
        form,
        "",
        () ->
            PointDetails.of(tag, kind)
                .place(place)
                .family(family.orElse(null))
                .pairTag(pair)
                .facing(facing)
                .phaseMark(mark)
                .surroundings(around)
                .approvedGap(gap.orElse(null))
                .intervalMonths(interval.orElse(null))
                .state(state.orElse(PointState.IN_USE))
                .build());
  }

  private static Facing facing(Form form) {
    Optional<BigDecimal> angle =
        form.optional(
            "angle", text -> new Facing(number(text, "-45"), "", null, null).angleDegrees());
    Optional<BigDecimal> ramp =
        form.optional(
            "ramp", text -> new Facing(null, "", null, number(text, "9.5")).rampDegrees());
    Optional<Rotation> rotation =
        form.optional(
            "rotation",
            word -> known(word, Rotation.named(word), "a sense of rotation", rotations()));
    String end = text(form, "viewing-end", "the viewing end", 60);
    return new Facing(angle.orElse(null), end, rotation.orElse(null), ramp.orElse(null));
  }

  private static PhaseMark mark(Form form) {
    Optional<Mark> mark =
        form.optional("mark", word -> known(word, Mark.named(word), "a mark", marks()));
    Optional<Integer> events =
        form.optional("events", text -> whole(text, "events a turn", 10_000));
    Optional<BigDecimal> threshold =
        form.optional(
            "threshold", text -> new PhaseMark(null, null, number(text, "-8.5")).thresholdVolts());
    return new PhaseMark(mark.orElse(null), events.orElse(null), threshold.orElse(null));
  }

  private static Surroundings surroundings(Form form) {
    return new Surroundings(
        text(form, "alloy", "the shaft alloy", 60),
        text(form, "area", "the area classification", 60),
        text(form, "box", "the junction box", 60),
        temperature(form, "tip-temperature"),
        temperature(form, "route-temperature"),
        temperature(form, "box-temperature"));
  }

  private static @Nullable BigDecimal temperature(Form form, String field) {
    return form.optional(
            field,
            text -> new Surroundings("", "", "", number(text, "95"), null, null).tipCelsius())
        .orElse(null);
  }

  private static Reported gap(Form form, String text) {
    Unit unit = form.typed("gap-unit").equals(Unit.MIL.symbol()) ? Unit.MIL : Unit.MICROMETRE;
    Reported gap =
        Reported.read(text, unit)
            .orElseThrow(
                () -> new Refused(PlantProblem.NOT_A_NUMBER, text.strip(), "a gap", "1270"));
    PointDetails.refuseImpossible(gap);
    return gap;
  }

  private static BigDecimal number(String text, String example) {
    return Numbers.read(text)
        .orElseThrow(
            () -> new Refused(PlantProblem.NOT_A_NUMBER, text.strip(), "a number", example));
  }

  static int whole(String text, String what, int most) {
    BigDecimal number = number(text, "12");
    if (number.stripTrailingZeros().scale() > 0
        || number.signum() <= 0
        || number.compareTo(BigDecimal.valueOf(most)) > 0) {
      throw new Refused(
          PlantProblem.OUT_OF_RANGE,
          "The number of " + what,
          text.strip(),
          "a whole number from 1 to " + most);
    }
    return number.intValueExact();
  }

  private static String text(Form form, String field, String what, int most) {
    return form.optional(field, text -> Text.kept(what, text, most)).orElse("");
  }

  private static FamilyId family(List<Family> families, String code) {
    return families.stream()
        .filter(family -> family.code().equalsIgnoreCase(code.strip()))
        .findFirst()
        .map(Family::id)
        .orElseThrow(() -> new Refused(PlantProblem.NOT_THERE, "family", code.strip()));
  }

  private static <T> T known(String word, Optional<T> found, String what, Map<String, String> all) {
    return found.orElseThrow(
        () -> new Refused(PlantProblem.UNKNOWN_WORD, word, what, String.join(", ", all.keySet())));
  }

  static Map<String, String> kinds() {
    return words(PointKind.values(), PointKind::word);
  }

  static Map<String, String> rotations() {
    return words(Rotation.values(), Rotation::word);
  }

  static Map<String, String> marks() {
    return words(Mark.values(), Mark::word);
  }

  static Map<String, String> states() {
    return words(PointState.values(), PointState::word);
  }

  private static <T> Map<String, String> words(T[] all, Function<T, String> word) {
    return Arrays.stream(all)
        .collect(Collectors.toMap(word, word, (a, b) -> a, LinkedHashMap::new));
  }

  /**
   * Runs it; what it refuses becomes the field's complaint, or the form's where no field is named.
   */
  static <T> Optional<T> attempt(Form form, String field, Supplier<T> work) {
    try {
      return Optional.of(work.get());
    } catch (Refused refused) {
      if (field.isEmpty()) {
        form.complain(refused);
      } else {
        form.complain(field, refused.getMessage() + " (" + refused.problem().code() + ")");
      }
      return Optional.empty();
    }
  }

  /** The fields as they are recorded now. */
  static Form of(Point point, @Nullable String family) {
    PointDetails details = point.details();
    Map<String, String> fields = new HashMap<>();
    fields.put("machine", Long.toString(point.machine().number()));
    fields.put("tag", details.tag());
    fields.put("kind", details.kind().word());
    fields.put("place", details.place());
    fields.put("pair", details.pairTag());
    fields.put("state", details.state().word());
    fields.put("family", family == null ? "" : family);
    fields.put("interval", shown(details.intervalMonths()));
    if (details.approvedGap() != null) {
      fields.put("gap", details.approvedGap().typed());
      fields.put("gap-unit", details.approvedGap().unit().symbol());
    }
    put(fields, details.facing(), details.phaseMark());
    put(fields, details.surroundings());
    return Form.of(fields).at(Integer.toString(point.version()));
  }

  private static void put(Map<String, String> fields, Facing facing, PhaseMark mark) {
    fields.put("angle", shown(facing.angleDegrees()));
    fields.put("viewing-end", facing.viewingEnd());
    fields.put("rotation", facing.rotation() == null ? "" : facing.rotation().word());
    fields.put("ramp", shown(facing.rampDegrees()));
    fields.put("mark", mark.mark() == null ? "" : mark.mark().word());
    fields.put("events", shown(mark.eventsPerTurn()));
    fields.put("threshold", shown(mark.thresholdVolts()));
  }

  private static void put(Map<String, String> fields, Surroundings around) {
    fields.put("alloy", around.shaftAlloy());
    fields.put("area", around.areaClass());
    fields.put("box", around.junctionBox());
    fields.put("tip-temperature", shown(around.tipCelsius()));
    fields.put("route-temperature", shown(around.routeCelsius()));
    fields.put("box-temperature", shown(around.boxCelsius()));
  }

  private static String shown(@Nullable Number number) {
    return number == null
        ? ""
        : number instanceof BigDecimal decimal ? Numbers.plain(decimal) : number.toString();
  }
}
