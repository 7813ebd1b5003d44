package loopwright.web;

import io.javalin.http.Context;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import loopwright.problem.Refused;
import loopwright.units.Reported;
import loopwright.units.Unit;
import org.jspecify.annotations.Nullable;

/**
 * What a person typed into a form and what is wrong with it. Everything typed is kept so that a
 * complaint never costs a word. Belongs to one request; never shared.
 */
public final class Form {
  /** The hidden field that carries the version of the record which the form was opened on. */
  static final String VERSION = "version";

  private final Map<String, List<String>> typed;
  private final Map<String, String> complaints = new LinkedHashMap<>();
  private final List<String> general = new ArrayList<>();

  private Form(Map<String, List<String>> typed) {
    this.typed = new LinkedHashMap<>(typed);
  }

  /** The posted fields. */
  public static Form from(Context http) {
    return new Form(http.formParamMap());
  }

  /** The fields in the address, for filters. */
  public static Form fromQuery(Context http) {
    return new Form(http.queryParamMap());
  }

  public static Form blank() {
    return new Form(Map.of());
  }

  /** Filled in beforehand, for editing what is there. */
  public static Form of(Map<String, String> values) {
    Form form = blank();
    values.forEach(form::put);
    return form;
  }

  public Form put(String name, String value) {
    typed.put(name, List.of(value));
    return this;
  }

  /** Fills in a field that stands several times. */
  public Form put(String name, List<String> values) {
    typed.put(name, List.copyOf(values));
    return this;
  }

  /** Everything typed, by field. */
  public Map<String, List<String>> everything() {
    return Map.copyOf(typed);
  }

  /** As typed; empty when nothing was. */
  public String typed(String name) {
    List<String> values = every(name);
    return values.isEmpty() ? "" : values.get(0);
  }

  /** Every value of a field that may stand several times: rows of a table, check boxes. */
  public List<String> every(String name) {
    return typed.getOrDefault(name, List.of());
  }

  public boolean chosen(String name, String value) {
    return every(name).contains(value);
  }

  /**
   * Reads a field. A {@link Refused} or an IllegalArgumentException of the parser becomes the
   * field's complaint. The parser also gets an empty text: it says itself what is needed.
   *
   * @return the value; meaningless (null) when the field was complained of, so ask {@link #ok()}
   *     before using it
   */
  @SuppressWarnings("NullAway")
  public <T> T read(String name, Function<String, T> parser) {
    try {
      return parser.apply(typed(name));
    } catch (NumberFormatException noNumber) {
      complain(name, "\u201c" + typed(name) + "\u201d is not a number.");
    } catch (Refused | IllegalArgumentException wrong) {
      complain(name, String.valueOf(wrong.getMessage()));
    }
    return null;
  }

  /** Reads a field that may stay empty; empty also when it was complained of. */
  public <T> Optional<T> optional(String name, Function<String, T> parser) {
    return typed(name).isBlank()
        ? Optional.empty()
        : Optional.ofNullable(this.<@Nullable T>read(name, parser));
  }

  /** A text that must be there, blanks around it dropped. */
  public String text(String name, int mostCharacters) {
    return read(name, typed -> Fields.text(typed, mostCharacters));
  }

  /** A number with decimal point or comma. */
  public BigDecimal number(String name) {
    return read(name, Fields::number);
  }

  /** A number in that unit, kept as typed. */
  public Reported reported(String name, Unit unit) {
    return read(name, typed -> Fields.reported(typed, unit));
  }

  /** A number whose unit was chosen in the field {@code NAME-unit}; see part/field, measured. */
  public Reported measured(String name, Unit... choices) {
    Unit unit = unit(name + "-unit", List.of(choices));
    return reported(name, unit == null ? choices[0] : unit);
  }

  /** One of the units, by its symbol; complained of at its field when it is none of them. */
  public Unit unit(String field, List<Unit> choices) {
    return read(field, symbol -> Fields.unit(symbol, choices.toArray(Unit[]::new)));
  }

  /** The same; the first of them when no unit came with the form, as from a hand-made address. */
  public Unit usualUnit(String field, List<Unit> choices) {
    return typed(field).isBlank() ? choices.get(0) : unit(field, choices);
  }

  /** A day, as the browser's date field sends it: 2026-11-24. */
  public LocalDate day(String name) {
    return read(name, Fields::day);
  }

  /** One of the constants, by its name. */
  public <E extends Enum<E>> E oneOf(String name, Class<E> choices) {
    return read(name, typed -> Fields.constant(typed, choices));
  }

  /** Complains of a field; the first complaint of a field stays. */
  public void complain(String name, String sentence) {
    complaints.putIfAbsent(name, sentence);
  }

  /** Complains of the form as a whole. */
  public void complain(String sentence) {
    general.add(sentence);
  }

  /** Complains of the form as a whole with a published reason. */
  public void complain(Refused refused) {
    complain(refused.getMessage() + " (" + refused.problem().code() + ")");
  }

  /** What is wrong with that field, or null. */
  public @Nullable String complaint(String name) {
    return complaints.get(name);
  }

  /** By field, in the order they were read. */
  public Map<String, String> complaints() {
    return complaints;
  }

  /** What is wrong with the form as a whole. */
  public List<String> general() {
    return general;
  }

  public boolean ok() {
    return complaints.isEmpty() && general.isEmpty();
  }

  /** The version of the record as it was when the form was opened; empty when it carries none. */
  public String version() {
    return typed(VERSION);
  }

  /** Makes the form carry the version of the record that is being edited. */
  public Form at(String version) {
    return put(VERSION, version);
  }

  /**
   * True when the record has moved on since the form was opened. Show the form again with status
   * 409, what changed meanwhile, and {@link #at} the present version.
   */
  public boolean stale(String presentVersion) {
    return !version().equals(presentVersion);
  }
}
