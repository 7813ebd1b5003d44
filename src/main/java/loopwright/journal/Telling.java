package loopwright.journal;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import loopwright.db.Fact;
import loopwright.time.SiteMoment;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Turns facts into what people read: words for columns, names for keys, the site's clock. */
final class Telling {
  private final RowNameStore names;
  private final ZoneId zone;
  private final Map<RowNameStore.Row, String> known;

  private Telling(RowNameStore names, ZoneId zone, Map<RowNameStore.Row, String> known) {
    this.names = names;
    this.zone = zone;
    this.known = known;
  }

  static List<Told> of(DSLContext sql, List<Fact> facts, ZoneId zone) {
    RowNameStore names = new RowNameStore();
    Set<RowNameStore.Row> rows = new HashSet<>();
    for (Fact fact : facts) {
      rows.add(new RowNameStore.Row(parent(fact), fact.key()));
      collect(names, fact, fact.before(), rows);
      fact.rows().forEach(row -> collect(names, fact, row, rows));
    }
    Telling telling = new Telling(names, zone, names.names(sql, rows));
    return facts.stream().map(telling::tell).toList();
  }

  private static void collect(
      RowNameStore names, Fact fact, Map<String, String> texts, Set<RowNameStore.Row> rows) {
    texts.forEach(
        (column, text) ->
            names
                .target(fact.table(), column)
                .ifPresent(table -> rows.add(new RowNameStore.Row(table, text))));
  }

  /** A group goes by its parent's name. */
  private static String parent(Fact fact) {
    return fact.table().equals("calibration_reading") ? "calibration" : fact.table();
  }

  private Told tell(Fact fact) {
    boolean group = fact.operation().equals("insert group");
    String did = FieldWords.operation(fact.operation());
    String kind = FieldWords.words(fact.table());
    return group
        ? new Told(did, kind, name(fact), List.of(), headings(fact), rows(fact))
        : new Told(did, kind, name(fact), lines(fact), List.of(), List.of());
  }

  /** As the fact itself calls it, else as it is called now, else its number. */
  private String name(Fact fact) {
    Optional<String> column = names.naming(fact.table());
    Optional<String> told =
        column.flatMap(
            c ->
                fact.rows().stream()
                    .map(row -> Optional.ofNullable(row.get(c)))
                    .flatMap(Optional::stream)
                    .findFirst()
                    .or(() -> Optional.ofNullable(fact.before().get(c))));
    String now = known.get(new RowNameStore.Row(parent(fact), fact.key()));
    return told.orElse(now == null ? "number " + fact.key() : now);
  }

  private List<Told.Line> lines(Fact fact) {
    Map<String, String> after = fact.rows().isEmpty() ? Map.of() : fact.rows().get(0);
    List<Told.Line> lines = new ArrayList<>();
    for (String column : columns(List.of(fact.before(), after))) {
      lines.add(
          new Told.Line(
              FieldWords.column(column),
              shown(fact, column, fact.before().get(column)),
              shown(fact, column, after.get(column))));
    }
    return lines;
  }

  private static List<String> headings(Fact fact) {
    return columns(fact.rows()).stream().map(FieldWords::column).toList();
  }

  private List<List<String>> rows(Fact fact) {
    Set<String> columns = columns(fact.rows());
    List<List<String>> rows = new ArrayList<>();
    for (Map<String, String> row : fact.rows()) {
      List<String> cells = new ArrayList<>();
      for (String column : columns) {
        String text = shown(fact, column, row.get(column));
        cells.add(text == null ? "" : text);
      }
      rows.add(cells);
    }
    return rows;
  }

  private static Set<String> columns(List<Map<String, String>> rows) {
    Set<String> columns = new TreeSet<>();
    rows.forEach(row -> columns.addAll(row.keySet()));
    columns.removeIf(column -> !FieldWords.isTold(column));
    return columns;
  }

  private @Nullable String shown(Fact fact, String column, @Nullable String text) {
    if (text == null) {
      return null;
    }
    Optional<String> target = names.target(fact.table(), column);
    if (target.isPresent()) {
      String name = known.get(new RowNameStore.Row(target.get(), text));
      return name == null ? "number " + text : name;
    }
    return FieldWords.isOpen(text) ? "until further notice" : moment(FieldWords.truth(text));
  }

  /** Only texts that can be nothing but a moment: those end in Z. */
  private String moment(String text) {
    if (text.length() < 20 || text.charAt(text.length() - 1) != 'Z' || text.charAt(10) != 'T') {
      return text;
    }
    try {
      return SiteMoment.shown(Instant.parse(text), zone);
    } catch (DateTimeParseException other) {
      return text;
    }
  }
}
