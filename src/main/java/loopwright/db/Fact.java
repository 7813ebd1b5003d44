package loopwright.db;

import java.util.List;
import java.util.Map;

/**
 * One thing a change did to one row (or to one parent's child rows), as text.
 *
 * @param operation {@code insert}, {@code update}, {@code delete} or {@code insert group}
 * @param table lower case
 * @param key the row's primary key, or the parent's for a group
 * @param before the changed columns as they were; empty for inserts
 * @param rows what was written: one map of column to text; several for a group; for an update the
 *     changed columns only
 * @param hash {@link RowText#hash} of the whole row (or group) afterwards; empty after a delete
 */
public record Fact(
    String operation,
    String table,
    String key,
    Map<String, String> before,
    List<Map<String, String>> rows,
    String hash) {}
