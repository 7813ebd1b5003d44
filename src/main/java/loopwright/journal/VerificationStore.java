package loopwright.journal;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.JOURNAL_ENTRY;
import static loopwright.db.gen.Tables.JOURNAL_HEAD;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Consumer;
import loopwright.db.Journaled;
import loopwright.db.RowText;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.Result;
import org.jooq.impl.DSL;

/** Reads journal and tables in chunks, so that a pass over millions of rows stays small. */
final class VerificationStore {
  private static final int MOST_ENTRIES = 512;
  private static final long BYTES_A_CHUNK = 4_000_000;
  private static final int ROWS_A_CHUNK = 2_000;

  /** The head of the journal as stored. */
  record Head(long seq, byte[] chainHash) {}

  /** A row, or the rows of one parent, as text. */
  record KeyedRows(long key, List<Map<String, String>> rows) {}

  Optional<Head> head(DSLContext sql) {
    return sql.selectFrom(JOURNAL_HEAD)
        .fetchOptional(row -> new Head(row.getSeq(), row.getChainHash()));
  }

  /** All entries in order of their numbers; large ones in smaller chunks. */
  void entries(DSLContext sql, Consumer<List<StoredEntry>> chunk) {
    long after = Long.MIN_VALUE;
    int limit = 16;
    while (true) {
      List<StoredEntry> entries = entriesAfter(sql, after, limit);
      if (entries.isEmpty()) {
        return;
      }
      chunk.accept(entries);
      after = entries.get(entries.size() - 1).seq();
      long bytes = entries.stream().mapToLong(entry -> entry.body().length).sum();
      limit = (int) Math.max(1, Math.min(MOST_ENTRIES, entries.size() * BYTES_A_CHUNK / bytes));
    }
  }

  private static List<StoredEntry> entriesAfter(DSLContext sql, long after, int limit) {
    return sql.select(JOURNAL_ENTRY.fields())
        .select(CHANGE.fields())
        .from(JOURNAL_ENTRY)
        .join(CHANGE)
        .on(CHANGE.ID.eq(JOURNAL_ENTRY.CHANGE_ID))
        .where(JOURNAL_ENTRY.SEQ.gt(after))
        .orderBy(JOURNAL_ENTRY.SEQ)
        .limit(limit)
        .fetch(VerificationStore::entry);
  }

  static StoredEntry entry(Record row) {
    return new StoredEntry(
        row.get(JOURNAL_ENTRY.SEQ),
        row.get(JOURNAL_ENTRY.CHANGE_ID),
        row.get(JOURNAL_ENTRY.PART),
        row.get(JOURNAL_ENTRY.IS_LAST),
        row.get(JOURNAL_ENTRY.RECORDED_AT).toInstant(),
        row.get(JOURNAL_ENTRY.BODY),
        row.get(JOURNAL_ENTRY.LEAF_HASH),
        row.get(JOURNAL_ENTRY.CHAIN_HASH),
        new StoredEntry.Made(
            row.get(CHANGE.MADE_AT).toInstant(),
            row.get(CHANGE.ACTOR_ID),
            row.get(CHANGE.ACTOR_NAME),
            row.get(CHANGE.ACTOR_ROLE),
            row.get(CHANGE.WHAT),
            row.get(CHANGE.REASON)));
  }

  long countChanges(DSLContext sql) {
    return sql.fetchCount(CHANGE);
  }

  /** The first change that no entry tells of. */
  OptionalLong firstUntoldChange(DSLContext sql) {
    Long id =
        sql.select(DSL.min(CHANGE.ID))
            .from(CHANGE)
            .whereNotExists(
                sql.selectOne().from(JOURNAL_ENTRY).where(JOURNAL_ENTRY.CHANGE_ID.eq(CHANGE.ID)))
            .fetchSingle()
            .value1();
    return id == null ? OptionalLong.empty() : OptionalLong.of(id);
  }

  /** All rows of the table, a parent's rows together, in order of their keys. */
  void rows(DSLContext sql, Journaled table, Consumer<List<KeyedRows>> chunk) {
    int limit = ROWS_A_CHUNK;
    long after = Long.MIN_VALUE;
    while (true) {
      Result<? extends Record> rows = rowsAfter(sql, table, after, limit);
      boolean end = rows.size() < limit;
      List<KeyedRows> keyed = keyed(table, rows);
      if (!end && table.grouped()) {
        keyed.remove(keyed.size() - 1); // its rows may go on in the next chunk
      }
      limit = keyed.isEmpty() ? limit * 2 : limit;
      if (!keyed.isEmpty()) {
        chunk.accept(keyed);
        after = keyed.get(keyed.size() - 1).key();
      }
      if (end) {
        return;
      }
    }
  }

  private static Result<? extends Record> rowsAfter(
      DSLContext sql, Journaled table, long after, int limit) {
    return sql.selectFrom(table.table())
        .where(table.key().gt(after))
        .orderBy(table.order())
        .limit(limit)
        .fetch();
  }

  private static List<KeyedRows> keyed(Journaled table, Result<? extends Record> rows) {
    List<KeyedRows> keyed = new ArrayList<>(rows.size());
    for (Record row : rows) {
      long key = row.get(table.key());
      KeyedRows latest = keyed.isEmpty() ? null : keyed.get(keyed.size() - 1);
      if (latest == null || latest.key() != key) {
        latest = new KeyedRows(key, new ArrayList<>(1));
        keyed.add(latest);
      }
      latest.rows().add(RowText.of(row));
    }
    return keyed;
  }
}
