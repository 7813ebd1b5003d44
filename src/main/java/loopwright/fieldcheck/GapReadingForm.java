package loopwright.fieldcheck;

import java.time.Instant;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.cause.TappingPoint;
import loopwright.loop.TypedMoment;
import loopwright.problem.Text;
import loopwright.units.Reported;
import loopwright.units.Unit;
import loopwright.web.Form;

/** Reads the form of a gap reading; complaints stay with the form. */
final class GapReadingForm {
  static final List<String> UNITS = List.of(Unit.VOLT.symbol(), Unit.MILLIVOLT.symbol());

  private GapReadingForm() {}

  static Optional<NewGapReading> read(Form form, long point, ZoneId zone, Instant now) {
    Reported typed = form.measured("volts", Unit.VOLT, Unit.MILLIVOLT);
    if (form.complaint("volts") == null) {
      form.read("volts", text -> NewGapReading.volts(typed));
    }
    TappingPoint tap =
        form.read("tapped-at", text -> chosen(TappingPoint.named(text), "where it was taken"));
    MachineState state =
        form.read("state", text -> chosen(MachineState.named(text), "what the machine did"));
    Warmth warmth = form.read("warmth", text -> chosen(Warmth.named(text), "cold or hot"));
    String rotor = form.read("rotor", text -> Text.kept("the rotor's position", text, 120));
    Optional<Instant> at = TypedMoment.read(form, zone, now);
    String by = form.read("taken-by", text -> Text.needed("who read it", text, 120));
    String note = form.read("note", text -> Text.kept("the note", text, 2000));
    form.read("reason", text -> Text.needed("why it was read", text, 400));
    return form.ok()
        ? at.map(
            moment ->
                new NewGapReading(
                    point, moment, by, typed, tap, state, warmth, rotor, note, "entered"))
        : Optional.empty();
  }

  private static <T> T chosen(Optional<T> found, String what) {
    return found.orElseThrow(() -> new IllegalArgumentException("Say " + what + "."));
  }

  static Map<String, String> states() {
    Map<String, String> states = new LinkedHashMap<>();
    states.put("", "choose");
    for (MachineState state : MachineState.values()) {
      states.put(state.word(), state.label());
    }
    return states;
  }

  static Map<String, String> warmths() {
    Map<String, String> warmths = new LinkedHashMap<>();
    for (Warmth warmth : List.of(Warmth.NOT_RECORDED, Warmth.COLD, Warmth.HOT)) {
      warmths.put(warmth.word(), warmth.word());
    }
    return warmths;
  }

  static Map<String, String> places() {
    Map<String, String> places = new LinkedHashMap<>();
    places.put(TappingPoint.DRIVER.label(), "the driver's terminals");
    places.put(TappingPoint.BARRIER.label(), "behind the barrier");
    places.put(TappingPoint.RACK.label(), "the rack's buffered output");
    places.put(TappingPoint.MONITOR.label(), "the monitor's reading");
    return places;
  }
}
