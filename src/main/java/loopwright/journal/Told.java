package loopwright.journal;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One fact as a page shows it: fields before and after, or the rows of a group as a table.
 *
 * @param did added, changed or removed
 * @param kind of thing, for instance {@code point}
 * @param name what the thing is called; its number when it has no name
 * @param headings of a group's table; empty otherwise
 */
record Told(
    String did,
    String kind,
    String name,
    List<Line> lines,
    List<String> headings,
    List<List<String>> rows) {

  /**
   * One field.
   *
   * @param before null when there was nothing
   * @param after null when nothing is left
   */
  record Line(String field, @Nullable String before, @Nullable String after) {}

  public boolean isGroup() {
    return !headings.isEmpty();
  }

  /** Whether anything was there before: else the column for it is left out. */
  public boolean hasBefore() {
    return lines.stream().anyMatch(line -> line.before != null);
  }

  public boolean hasAfter() {
    return lines.stream().anyMatch(line -> line.after != null);
  }
}
