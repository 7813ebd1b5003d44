package loopwright.datasheet;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import loopwright.datasheet.SheetDetails.Limit;
import loopwright.matching.Approval;
import loopwright.matching.AreaClass;
import loopwright.matching.Connector;
import loopwright.matching.Entity;
import loopwright.matching.PartSheet;
import loopwright.matching.Range;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import loopwright.units.Numbers;
import loopwright.web.Form;
import org.jspecify.annotations.Nullable;

/** What is typed about a data sheet, and back. */
final class SheetForm {
  private SheetForm() {}

  /** Empty when something was complained of. */
  static Optional<SheetDetails> read(Form form) {
    Connector nearProbe = connector(form, "toward-probe");
    Connector nearDriver = connector(form, "toward-driver");
    Range celsius = range(form, "celsius", "The temperature", Limit.CELSIUS, "120");
    Approval approval = approval(form);
    Entity entity =
        new Entity(
            number(form, "volts", "The voltage", Limit.ENTITY, "28"),
            number(form, "milliamperes", "The current", Limit.ENTITY, "140"),
            number(form, "milliwatts", "The power", Limit.ENTITY, "850"),
            number(form, "nanofarads", "The capacitance", Limit.ENTITY, "5.7"),
            number(form, "microhenries", "The inductance", Limit.ENTITY, "930"));
    Range supply = range(form, "supply", "The supply", Limit.VOLTS, "-17.5");
    String source = form.optional("source", text -> Text.kept("the source", text, 200)).orElse("");
    if (!form.ok()) {
      return Optional.empty();
    }
    PartSheet sheet = new PartSheet(nearProbe, nearDriver, celsius, approval, entity);
    return Optional.of(new SheetDetails(sheet, supply, source));
  }

  private static @Nullable Connector connector(Form form, String field) {
    return form.optional(field, SheetForm::connector).orElse(null);
  }

  private static Connector connector(String typed) {
    return Connector.read(Text.kept("the connector", typed, 70))
        .orElseThrow(() -> new Refused(SheetProblem.NO_CONNECTOR, typed.strip()));
  }

  private static Range range(Form form, String field, String what, Limit limit, String example) {
    BigDecimal low = number(form, field + "-low", what, limit, example);
    BigDecimal high = number(form, field + "-high", what, limit, example);
    if (low != null && high != null && low.compareTo(high) >= 0) {
      form.complain(
          field + "-high",
          Refused.say(SheetProblem.CROSSED, what, Numbers.plain(low), Numbers.plain(high)));
    }
    return new Range(low, high);
  }

  private static @Nullable BigDecimal number(
      Form form, String field, String what, Limit limit, String example) {
    return form.optional(
            field,
            typed ->
                SheetDetails.checked(
                    what,
                    Numbers.read(typed)
                        .orElseThrow(
                            () ->
                                new Refused(
                                    SheetProblem.NOT_A_NUMBER,
                                    typed.strip(),
                                    "one number",
                                    example)),
                    limit))
        .orElse(null);
  }

  private static @Nullable Approval approval(Form form) {
    Optional<Approval.Level> level = form.optional("level", known(Approval.Level::named));
    Optional<AreaClass.GasGroup> group = form.optional("group", known(AreaClass.GasGroup::named));
    Optional<AreaClass.TemperatureClass> temperature =
        form.optional("class", known(AreaClass.TemperatureClass::named));
    String certificate =
        form.optional("certificate", text -> Text.kept("the certificate", text, 60)).orElse("");
    boolean safe = form.chosen("safe", "yes");
    boolean covers = form.chosen("covers", "yes");
    if (level.isPresent() && group.isPresent() && temperature.isPresent()) {
      return new Approval(certificate, level.get(), group.get(), temperature.get(), safe, covers);
    }
    boolean begun = level.isPresent() || group.isPresent() || temperature.isPresent();
    if (begun || !certificate.isEmpty() || safe || covers) {
      form.complain("level", Refused.say(SheetProblem.HALF_APPROVAL));
    }
    return null;
  }

  private static <T> Function<String, T> known(Function<String, Optional<T>> named) {
    return word ->
        named
            .apply(word)
            .orElseThrow(() -> new IllegalArgumentException("Choose one from the list."));
  }

  static Map<String, String> levels() {
    return choices(Stream.of(Approval.Level.values()).map(Approval.Level::word));
  }

  static Map<String, String> groups() {
    return choices(Stream.of(AreaClass.GasGroup.values()).map(AreaClass.GasGroup::name));
  }

  static Map<String, String> classes() {
    return choices(
        Stream.of(AreaClass.TemperatureClass.values()).map(AreaClass.TemperatureClass::name));
  }

  private static Map<String, String> choices(Stream<String> words) {
    Map<String, String> choices = new LinkedHashMap<>();
    choices.put("", "not said");
    words.forEach(word -> choices.put(word, word));
    return choices;
  }

  /** The fields as they are recorded. */
  static Form of(SheetDetails details, int version) {
    PartSheet sheet = details.sheet();
    Map<String, String> fields = new HashMap<>();
    fields.put("toward-probe", text(sheet.towardProbe()));
    fields.put("toward-driver", text(sheet.towardDriver()));
    put(fields, "celsius", sheet.celsius());
    put(fields, "supply", details.supplyVolts());
    fields.put("source", details.source());
    Entity entity = sheet.entity();
    fields.put("volts", shown(entity.volts()));
    fields.put("milliamperes", shown(entity.milliamperes()));
    fields.put("milliwatts", shown(entity.milliwatts()));
    fields.put("nanofarads", shown(entity.nanofarads()));
    fields.put("microhenries", shown(entity.microhenries()));
    Approval approval = sheet.approval();
    if (approval != null) {
      put(fields, approval);
    }
    return Form.of(fields).at(Integer.toString(version));
  }

  private static void put(Map<String, String> fields, Approval approval) {
    fields.put("certificate", approval.certificate());
    fields.put("level", approval.level().word());
    fields.put("group", approval.group().name());
    fields.put("class", approval.temperature().name());
    fields.put("safe", approval.intrinsicallySafe() ? "yes" : "");
    fields.put("covers", approval.coversChain() ? "yes" : "");
  }

  private static void put(Map<String, String> fields, String field, Range range) {
    fields.put(field + "-low", shown(range.low()));
    fields.put(field + "-high", shown(range.high()));
  }

  private static String text(@Nullable Connector connector) {
    return connector == null ? "" : connector.toString();
  }

  private static String shown(@Nullable BigDecimal number) {
    return number == null ? "" : Numbers.plain(number);
  }
}
