package loopwright.journal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.TreeSet;
import loopwright.db.Fact;
import loopwright.db.Journaled;
import org.jspecify.annotations.Nullable;

/** Tells one row's story from the journal, to say which column of it disagrees. */
final class Replay {
  private final Journaled table;
  private final long key;
  private final List<Map<String, String>> rows = new ArrayList<>();
  private long entry;

  Replay(Journaled table, long key) {
    this.table = table;
    this.key = key;
  }

  void read(EntryBody body) {
    body.facts().stream()
        .filter(fact -> fact.table().equals(table.name()))
        .filter(fact -> fact.key().equals(Long.toString(key)))
        .forEach(fact -> read(body.seq(), fact));
  }

  private void read(long seq, Fact fact) {
    entry = seq;
    if (!fact.operation().equals("update")) {
      rows.clear();
      fact.rows().forEach(row -> rows.add(new TreeMap<>(row)));
    } else if (!rows.isEmpty()) {
      rows.get(0).keySet().removeAll(fact.before().keySet());
      fact.rows().forEach(rows.get(0)::putAll);
    }
  }

  Disagreement missing() {
    return Disagreement.ofRow(
        table.name(), key, "it is missing, though entry " + entry + " wrote it.");
  }

  /** Compares with what the table holds. */
  Disagreement against(List<Map<String, String>> found) {
    if (rows.isEmpty()) {
      return Disagreement.ofRow(table.name(), key, "no entry of the journal tells of it.");
    }
    if (found.size() != rows.size()) {
      return Disagreement.ofRow(
          table.name(),
          key,
          "it has %s rows, entry %s wrote %s.".formatted(found.size(), entry, rows.size()));
    }
    for (int i = 0; i < rows.size(); i++) {
      TreeSet<String> columns = new TreeSet<>(rows.get(i).keySet());
      columns.addAll(found.get(i).keySet());
      for (String column : columns) {
        @Nullable String told = rows.get(i).get(column);
        @Nullable String held = found.get(i).get(column);
        if (!Objects.equals(told, held)) {
          String which = rows.size() == 1 ? "" : " (in its row " + (i + 1) + ")";
          return Disagreement.ofColumn(
              entry,
              table,
              key,
              column,
              "it holds %s, entry %s says %s%s."
                  .formatted(quoted(held), entry, quoted(told), which));
        }
      }
    }
    return Disagreement.ofRow(
        table.name(), key, "its columns are as told, but entry " + entry + " gives another hash.");
  }

  private static String quoted(@Nullable String text) {
    return text == null ? "nothing" : "\u201c" + text + "\u201d";
  }
}
