package loopwright.journal;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.JOURNAL_ENTRY;

import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import loopwright.db.Chunks;
import loopwright.db.Tx;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.Result;
import org.jooq.impl.DSL;

/** Known time: which changes the record held when it had so many entries. */
public final class KnownTimeStore {
  private static final int AT_ONCE = 1_000;

  /**
   * More changes than can be under way at one time. A change begun later than another may be
   * entered before it, but only while both are under way.
   */
  private static final int UNDER_WAY = 200;

  private KnownTimeStore() {}

  /**
   * The last entry that had been made by that moment: the one before the first change that was
   * begun later.
   *
   * @return 0 if nothing was known then
   */
  public static long entryBy(DSLContext sql, Instant moment) {
    List<Long> later =
        sql.select(CHANGE.ID)
            .from(CHANGE)
            .where(CHANGE.MADE_AT.gt(Tx.moment(moment)))
            .orderBy(CHANGE.MADE_AT, CHANGE.ID)
            .limit(UNDER_WAY)
            .fetch(CHANGE.ID);
    Long first =
        sql.select(DSL.min(JOURNAL_ENTRY.SEQ))
            .from(JOURNAL_ENTRY)
            .where(JOURNAL_ENTRY.CHANGE_ID.in(later))
            .fetchSingle()
            .value1();
    return first == null ? JournalStore.head(sql) : first - 1;
  }

  /** Those of the changes that were complete when the record ended with that entry. */
  public static Set<Long> known(DSLContext sql, long entry, Collection<Long> changes) {
    Field<Long> last = DSL.max(JOURNAL_ENTRY.SEQ);
    Set<Long> known = new HashSet<>();
    for (List<Long> some : Chunks.of(new TreeSet<>(changes), AT_ONCE)) {
      known.addAll(
          sql.select(JOURNAL_ENTRY.CHANGE_ID)
              .from(JOURNAL_ENTRY)
              .where(JOURNAL_ENTRY.CHANGE_ID.in(some))
              .groupBy(JOURNAL_ENTRY.CHANGE_ID)
              .having(last.le(entry))
              .fetch(JOURNAL_ENTRY.CHANGE_ID));
    }
    return known;
  }

  /** The entry that completed each of the changes: since then it is known. */
  public static Map<Long, Long> entries(DSLContext sql, Collection<Long> changes) {
    Map<Long, Long> entries = new HashMap<>();
    for (List<Long> some : Chunks.of(new TreeSet<>(changes), AT_ONCE)) {
      sql.select(JOURNAL_ENTRY.CHANGE_ID, DSL.max(JOURNAL_ENTRY.SEQ))
          .from(JOURNAL_ENTRY)
          .where(JOURNAL_ENTRY.CHANGE_ID.in(some))
          .groupBy(JOURNAL_ENTRY.CHANGE_ID)
          .forEach(row -> entries.put(row.value1(), row.value2()));
    }
    return entries;
  }

  /**
   * Those of the beliefs that were held when the record ended with that entry: entered by then and
   * not given up by then.
   *
   * @param made the change that entered a belief
   * @param ended the change that gave it up; null where none did
   */
  public static <R extends Record> List<R> held(
      DSLContext sql, long entry, Result<R> beliefs, Field<Long> made, Field<Long> ended) {
    Set<Long> changes = new HashSet<>(beliefs.getValues(made));
    beliefs.getValues(ended).stream().filter(Objects::nonNull).forEach(changes::add);
    Set<Long> known = known(sql, entry, changes);
    return beliefs.stream()
        .filter(belief -> known.contains(belief.get(made)))
        .filter(belief -> !known.contains(belief.get(ended)))
        .toList();
  }
}
