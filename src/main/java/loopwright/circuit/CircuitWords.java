package loopwright.circuit;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import loopwright.loop.Content;
import loopwright.register.Component;
import loopwright.register.ComponentId;
import loopwright.register.Register;
import loopwright.units.Length;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** A field circuit name by name, in words. */
final class CircuitWords {
  private static final String NOT_KNOWN = "not known";

  private CircuitWords() {}

  static Map<String, String> of(DSLContext sql, Register register, FieldCircuit circuit) {
    Map<String, String> words = new LinkedHashMap<>();
    words.put("Barrier or isolator", barrier(sql, register, circuit.barrier()));
    Reported cable = circuit.cable();
    words.put("Field cable", cable == null ? NOT_KNOWN : cable + " (" + other(cable) + ")");
    words.put("Capacitance of the cable", shown(circuit.picofaradsPerMetre(), "pF/m"));
    words.put("Inductance of the cable", shown(circuit.microhenriesPerMetre(), "µH/m"));
    return words;
  }

  private static String other(Reported cable) {
    Length length = Length.of(cable);
    boolean metres = cable.unit().symbol().equals("m");
    return metres ? length.inFeet() : length.inMetres();
  }

  static String label(DSLContext sql, Register register, Content barrier) {
    return barrier.component().isEmpty()
        ? ""
        : register
            .component(sql, new ComponentId(barrier.component().getAsLong()))
            .map(Component::label)
            .orElse("");
  }

  private static String barrier(DSLContext sql, Register register, Content barrier) {
    if (barrier instanceof Content.None) {
      return "none fitted";
    }
    return barrier.component().isEmpty()
        ? NOT_KNOWN
        : register
            .component(sql, new ComponentId(barrier.component().getAsLong()))
            .map(Component::inWords)
            .orElse(NOT_KNOWN);
  }

  private static String shown(@Nullable BigDecimal number, String unit) {
    return number == null ? NOT_KNOWN : Numbers.plain(number) + " " + unit;
  }
}
