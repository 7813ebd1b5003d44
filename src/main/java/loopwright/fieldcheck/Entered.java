package loopwright.fieldcheck;

import loopwright.units.Reported;
import org.jspecify.annotations.Nullable;

/**
 * A figure or a word of a check, as typed.
 *
 * @param item its field
 * @param row 0 for what stands once, from 1 on in a table of readings
 * @param typed the text
 * @param number the same with its unit; null for words
 */
record Entered(String item, int row, String typed, @Nullable Reported number) {

  static Entered of(String item, int row, Reported number) {
    return new Entered(item, row, number.typed(), number);
  }

  static Entered of(String item, String word) {
    return new Entered(item, 0, word, null);
  }

  /** As people read it, with its unit. */
  String shown() {
    return number == null ? typed : number.toString();
  }
}
