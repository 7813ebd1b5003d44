package loopwright.circuit;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.loop.Content;
import loopwright.matching.PartKind;
import loopwright.problem.Refused;
import loopwright.register.Component;
import loopwright.register.Register;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.Unit;
import loopwright.web.Form;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** What is typed about a field circuit, and back. */
final class CircuitForm {
  static final Map<String, String> BARRIERS = new LinkedHashMap<>();

  static {
    BARRIERS.put("", "not known");
    BARRIERS.put("none", "none is fitted");
    BARRIERS.put("part", "this one:");
  }

  private CircuitForm() {}

  /** Empty when something was complained of. */
  static Optional<FieldCircuit> read(DSLContext sql, Register register, Form form) {
    Content barrier = form.read("barrier", typed -> barrier(sql, register, form, typed));
    Optional<Reported> cable = form.optional("cable", typed -> cable(form, typed));
    Optional<BigDecimal> farads =
        form.optional(
            "picofarads",
            typed ->
                FieldCircuit.checked(
                    "The capacitance", number(typed, "pF/m", "150"), 3, "10000", "pF/m"));
    Optional<BigDecimal> henries =
        form.optional(
            "microhenries",
            typed ->
                FieldCircuit.checked(
                    "The inductance", number(typed, "µH/m", "0.65"), 4, "1000", "µH/m"));
    if (!form.ok()) {
      return Optional.empty();
    }
    return Optional.of(
        new FieldCircuit(barrier, cable.orElse(null), farads.orElse(null), henries.orElse(null)));
  }

  private static Content barrier(DSLContext sql, Register register, Form form, String typed) {
    boolean isNone = form.typed("fitted").equals("none");
    if (isNone && !typed.isBlank()) {
      throw new Refused(CircuitProblem.NONE_WITH_SERIAL, typed.strip());
    }
    if (isNone) {
      return new Content.None();
    }
    return typed.isBlank() && !form.typed("fitted").equals("part")
        ? new Content.Unknown()
        : new Content.Part(part(sql, register, typed.strip()).id().number());
  }

  private static Component part(DSLContext sql, Register register, String label) {
    if (label.isEmpty()) {
      throw new Refused(CircuitProblem.BARRIER_NEEDED);
    }
    List<Component> named = register.labelled(sql, label);
    List<Component> fitting =
        named.stream().filter(part -> part.kind().place() == PartKind.Place.AFTER_DRIVER).toList();
    if (fitting.size() == 1) {
      return fitting.get(0);
    }
    if (named.isEmpty()) {
      throw new Refused(CircuitProblem.NO_SUCH_PART, label);
    }
    throw fitting.isEmpty()
        ? new Refused(CircuitProblem.OTHER_KIND, label, named.get(0).kind().word())
        : new Refused(CircuitProblem.SEVERAL, fitting.size(), label);
  }

  private static Reported cable(Form form, String typed) {
    Unit unit = form.typed("cable-unit").equals(Unit.FOOT.symbol()) ? Unit.FOOT : Unit.METRE;
    Reported cable =
        Reported.read(typed, unit)
            .orElseThrow(
                () ->
                    new Refused(
                        CircuitProblem.NOT_A_NUMBER,
                        typed.strip(),
                        "a length in " + unit.symbol(),
                        "120"));
    FieldCircuit.refuseImpossible(cable);
    return cable;
  }

  private static BigDecimal number(String typed, String unit, String example) {
    return Numbers.read(typed)
        .orElseThrow(() -> new Refused(CircuitProblem.NOT_A_NUMBER, typed.strip(), unit, example));
  }

  /** The fields as recorded. */
  static Form of(@Nullable Recorded recorded) {
    if (recorded == null) {
      return Form.blank().at("0");
    }
    FieldCircuit circuit = recorded.circuit();
    Map<String, String> fields = new HashMap<>();
    fields.put(
        "fitted", circuit.barrier() instanceof Content.Unknown ? "" : circuit.barrier().word());
    fields.put("barrier", recorded.label());
    Reported cable = circuit.cable();
    if (cable != null) {
      fields.put("cable", cable.typed());
      fields.put("cable-unit", cable.unit().symbol());
    }
    fields.put("picofarads", shown(circuit.picofaradsPerMetre()));
    fields.put("microhenries", shown(circuit.microhenriesPerMetre()));
    return Form.of(fields).at(Integer.toString(recorded.version()));
  }

  /**
   * For filling in.
   *
   * @param label of the barrier; empty if there is none
   */
  record Recorded(FieldCircuit circuit, int version, String label) {}

  private static String shown(@Nullable BigDecimal number) {
    return number == null ? "" : Numbers.plain(number);
  }
}
