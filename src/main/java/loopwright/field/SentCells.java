package loopwright.field;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.pack.FieldReturns;

/** What was typed on a device as a table: a line a cell name, as found and as left beside. */
final class SentCells {
  private static final String DOWN = ", down";

  private SentCells() {}

  private record Key(String line, String of, boolean down) {}

  private static List<FieldReturns.Cell> readingsLast(SentEntry entry) {
    return entry.cells().stream()
        .sorted(Comparator.comparing(cell -> cell.line().equals("reading")))
        .toList();
  }

  static List<FieldPages.CellLine> of(SentEntry entry) {
    Map<Key, String[]> lines = new LinkedHashMap<>();
    for (FieldReturns.Cell cell : readingsLast(entry)) {
      boolean down = cell.column().endsWith(DOWN);
      String[] texts =
          lines.computeIfAbsent(
              new Key(cell.line(), cell.of(), down), any -> new String[] {"", ""});
      texts[cell.column().startsWith("as found") ? 0 : 1] = cell.text();
    }
    List<FieldPages.CellLine> shown = new ArrayList<>();
    lines.forEach(
        (key, texts) ->
            shown.add(
                new FieldPages.CellLine(
                    key.line() + (key.down() ? DOWN : ""), key.of(), texts[0], texts[1])));
    return shown;
  }
}
