package loopwright.stock;

import loopwright.register.Stock;
import org.jspecify.annotations.Nullable;

/**
 * What there is of a sort beside what there is to be.
 *
 * @param family its code
 * @param minimum what was decided last; null when nothing ever was
 */
record Level(String family, Stock.Count count, Suggestion suggested, @Nullable Minimum minimum) {

  int least() {
    return minimum == null ? 0 : minimum.least();
  }

  /** How many are missing in stock; 0 when there are enough. */
  int missing() {
    return Math.max(0, least() - count.inStock());
  }
}
