package loopwright.importing;

import java.util.Collection;
import java.util.EnumMap;
import java.util.Map;

/** How many rows have which fate. */
public record RowCounts(int added, int changed, int unchanged, int refused) {

  static RowCounts of(Collection<RowFate> rows) {
    Map<Fate, Integer> counts = new EnumMap<>(Fate.class);
    rows.forEach(row -> counts.merge(row.fate(), 1, Integer::sum));
    return new RowCounts(
        counts.getOrDefault(Fate.ADDED, 0),
        counts.getOrDefault(Fate.CHANGED, 0),
        counts.getOrDefault(Fate.UNCHANGED, 0),
        counts.getOrDefault(Fate.REFUSED, 0));
  }

  /** Rows that would be written. */
  public int toWrite() {
    return added + changed;
  }
}
