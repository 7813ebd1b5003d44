package loopwright.journal;

import loopwright.db.Journaled;
import org.jspecify.annotations.Nullable;

/**
 * The first place where the tables and the journal don't say the same.
 *
 * @param entry number of the entry concerned, if one is
 * @param table lower case, if a table is concerned
 * @param key the row's number in it
 * @param column lower case
 * @param sentence all of it in plain words
 */
public record Disagreement(
    @Nullable Long entry,
    @Nullable String table,
    @Nullable String key,
    @Nullable String column,
    String sentence) {

  static Disagreement ofEntry(long entry, String sentence) {
    return new Disagreement(entry, null, null, null, "Entry " + entry + ": " + sentence);
  }

  static Disagreement ofJournal(String sentence) {
    return new Disagreement(null, null, null, null, sentence);
  }

  static Disagreement ofRow(String table, long key, String sentence) {
    return new Disagreement(
        null, table, Long.toString(key), null, inWords(table) + " " + key + ": " + sentence);
  }

  static Disagreement ofColumn(
      @Nullable Long entry, Journaled table, long key, String column, String sentence) {
    return new Disagreement(
        entry,
        table.name(),
        Long.toString(key),
        column,
        table.inWords() + " " + key + ", column " + column + ": " + sentence);
  }

  private static String inWords(String table) {
    return table.replace('_', ' ');
  }

  /** Ends a pass at the first disagreement. */
  static final class Found extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final transient Disagreement what;

    Found(Disagreement what) {
      super(what.sentence, null, false, false);
      this.what = what;
    }

    Disagreement what() {
      return what;
    }
  }

  /** Ends the pass here. */
  Found found() {
    return new Found(this);
  }
}
