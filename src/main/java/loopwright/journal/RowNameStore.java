package loopwright.journal;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.db.Journaled;
import loopwright.db.RowText;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.ForeignKey;
import org.jooq.Table;

/** What rows are called: the record speaks of tags, serials and names, not of keys. */
final class RowNameStore {
  /** The first of these columns that a table has names its rows. */
  private static final List<String> NAMING =
      List.of("tag", "label", "full_name", "code", "number", "name", "fingerprint");

  /** A row by table and number. */
  record Row(String table, String key) {}

  /** Which table a column points to, if it does. */
  Optional<String> target(String table, String column) {
    return Journaled.is(table) && !column.equals("change_id")
        ? Journaled.named(table).table().getReferences().stream()
            .filter(reference -> isFrom(reference, column))
            .map(reference -> lower(reference.getKey().getTable().getName()))
            .findFirst()
        : Optional.empty();
  }

  private static boolean isFrom(ForeignKey<?, ?> reference, String column) {
    return reference.getFields().size() == 1
        && lower(reference.getFields().get(0).getName()).equals(column);
  }

  /** The column that names rows of that table, if any does. */
  Optional<String> naming(String table) {
    if (!Journaled.is(table)) {
      return Optional.empty();
    }
    List<String> columns =
        Stream.of(Journaled.named(table).table().fields())
            .map(field -> lower(field.getName()))
            .toList();
    return NAMING.stream().filter(columns::contains).findFirst();
  }

  /** The rows' names as of now; a row that is gone or has no name is not in it. */
  Map<Row, String> names(DSLContext sql, Collection<Row> rows) {
    Map<Row, String> names = new HashMap<>();
    rows.stream()
        .map(Row::table)
        .distinct()
        .forEach(
            table ->
                naming(table).ifPresent(column -> names.putAll(names(sql, table, column, rows))));
    return names;
  }

  private static Map<Row, String> names(
      DSLContext sql, String name, String column, Collection<Row> rows) {
    Journaled table = Journaled.named(name);
    Field<?> naming = field(table.table(), column);
    List<Long> keys =
        rows.stream()
            .filter(row -> row.table.equals(name))
            .map(row -> Long.valueOf(row.key))
            .toList();
    Map<Row, String> names = new HashMap<>();
    sql.select(table.key(), naming)
        .from(table.table())
        .where(table.key().in(keys))
        .fetch()
        .forEach(
            found -> {
              String text = RowText.of(found).get(column);
              if (text != null) {
                names.put(new Row(name, String.valueOf(found.get(table.key()))), text);
              }
            });
    return names;
  }

  private static Field<?> field(Table<?> table, String column) {
    return Objects.requireNonNull(table.field(column.toUpperCase(Locale.ROOT)), column);
  }

  private static String lower(String name) {
    return name.toLowerCase(Locale.ROOT);
  }
}
