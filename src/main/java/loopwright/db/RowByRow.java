package loopwright.db;

import org.jooq.Field;
import org.jooq.impl.DSL;

/**
 * A column that is compared row by row, so that a list of keys is looked up in the index.
 *
 * <p>The embedded engine's cursor over an index takes a list of keys or a range, and where it is
 * offered both in one index it takes the range: {@code point_id IN (…) AND valid_until > …} then
 * reads the whole table and compares every row with every key.
 */
public final class RowByRow {
  private RowByRow() {}

  /** The same value, which no index knows. Only beside a list of keys that leaves few rows. */
  public static <T> Field<T> of(Field<T> column) {
    return DSL.coalesce(column, column);
  }
}
