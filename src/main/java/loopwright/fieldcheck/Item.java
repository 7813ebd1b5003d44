package loopwright.fieldcheck;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.units.Numbers;
import loopwright.units.Reported;
import loopwright.units.Unit;

/**
 * One field of a check's form.
 *
 * @param name as fields and rows call it
 * @param label as people read it
 * @param hint below the field; may be empty
 * @param units to choose from; empty for words
 * @param choices words to choose from; empty where it is typed
 * @param least in the canonical unit
 * @param most in the canonical unit
 * @param needed whether the check says nothing without it
 */
record Item(
    String name,
    String label,
    String hint,
    List<Unit> units,
    List<String> choices,
    double least,
    double most,
    boolean needed) {

  Item {
    units = List.copyOf(units);
    choices = List.copyOf(choices);
  }

  /** A number of zero or more; a voltage in general is not, see {@link #within}. */
  static Item measured(String name, String label, Unit... units) {
    return new Item(name, label, "", List.of(units), List.of(), 0, 1e9, false);
  }

  static Item chosen(String name, String label, String... choices) {
    return new Item(name, label, "", List.of(), List.of(choices), 0, 0, false);
  }

  Item hinting(String about) {
    return new Item(name, label, about, units, choices, least, most, needed);
  }

  /** With limits in the canonical unit, beyond which it is a slip. */
  Item within(double low, double high) {
    return new Item(name, label, hint, units, choices, low, high, needed);
  }

  /** It must be filled in. */
  Item must() {
    return new Item(name, label, hint, units, choices, least, most, true);
  }

  /** Whether a number is typed. */
  public boolean measured() {
    return !units.isEmpty();
  }

  /**
   * The same number, if it can be.
   *
   * @throws IllegalArgumentException if it lies beyond the limits
   */
  Reported plausible(Reported number) {
    double amount = number.canonical();
    if (amount < least || amount > most) {
      throw new IllegalArgumentException(
          "%s can't be: it lies outside %s to %s %s. Look at sign, unit and decimal mark."
              .formatted(
                  number, shown(least, number), shown(most, number), number.unit().symbol()));
    }
    return number;
  }

  private static String shown(double canonical, Reported like) {
    return Numbers.plain(like.unit().fromCanonical(new BigDecimal(Double.toString(canonical))));
  }

  /** Symbols of the units, in order. */
  public List<String> symbols() {
    return units.stream().map(Unit::symbol).toList();
  }

  /** Words to choose from, what is not recorded first. */
  public Map<String, String> words() {
    Map<String, String> words = new LinkedHashMap<>();
    words.put("", "not recorded");
    choices.forEach(word -> words.put(word, word));
    return words;
  }
}
