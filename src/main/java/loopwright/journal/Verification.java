package loopwright.journal;

import java.util.List;
import java.util.OptionalLong;
import loopwright.db.Database;
import loopwright.db.Journaled;
import loopwright.db.RowText;
import loopwright.problem.Refused;
import org.jooq.DSLContext;

/**
 * Recomputes the journal's chain, compares every journaled table with what the journal tells of it
 * and the derived tables with what they derive from, all as of one moment. Keeps 16 bytes a row in
 * memory. What the journal leaves out (passwords) can't be compared.
 */
public final class Verification {
  private final VerificationStore store = new VerificationStore();
  private final DerivedStore derived = new DerivedStore();
  private final DSLContext sql;
  private final ChainCheck chain = new ChainCheck();
  private final Ledger ledger = new Ledger();
  private long rows;

  private Verification(DSLContext sql) {
    this.sql = sql;
  }

  /**
   * @throws Refused {@link JournalProblem#UNKNOWN_FORMAT} if an entry is in a format that this
   *     program does not read
   */
  public static Verdict of(Database database) {
    return database.snapshot(sql -> new Verification(sql).run());
  }

  private Verdict run() {
    try {
      journal();
      Journaled.all().forEach(this::table);
      derived
          .firstDisagreement(sql)
          .ifPresent(
              wrong -> {
                throw wrong.found();
              });
      return new Verdict(chain.entries(), chain.changes(), rows, chain.hash(), null);
    } catch (Disagreement.Found found) {
      return new Verdict(chain.entries(), chain.changes(), rows, chain.hash(), found.what());
    }
  }

  private void journal() {
    store.entries(
        sql,
        stored ->
            stored.parallelStream().map(CheckedEntry::of).toList().forEach(this::followAndPost));
    chain.end(store.head(sql).orElse(null));
    if (store.countChanges(sql) != chain.changes()) {
      untold(store.firstUntoldChange(sql));
    }
  }

  private void followAndPost(CheckedEntry entry) {
    chain.follow(entry);
    if (entry.body() != null) {
      ledger.post(entry.body());
    }
  }

  private static void untold(OptionalLong change) {
    throw Disagreement.ofJournal(
            change.isPresent()
                ? "Change " + change.getAsLong() + " is in no entry of the journal."
                : "The journal tells of more changes than there are.")
        .found();
  }

  private record Hashed(VerificationStore.KeyedRows rows, String hash) {
    static Hashed of(VerificationStore.KeyedRows rows) {
      return new Hashed(rows, RowText.hash(rows.rows()));
    }
  }

  private void table(Journaled table) {
    store.rows(
        sql,
        table,
        chunk -> chunk.parallelStream().map(Hashed::of).toList().forEach(row -> row(table, row)));
    OptionalLong missing = ledger.firstMissing(table);
    if (missing.isPresent()) {
      throw replay(table, missing.getAsLong()).missing().found();
    }
  }

  private void row(Journaled table, Hashed row) {
    long key = row.rows.key();
    if (!ledger.settle(table, key, row.hash)) {
      throw replay(table, key).against(row.rows.rows()).found();
    }
    rows += row.rows.rows().size();
  }

  /** Reads the journal once more for one row; only when something is wrong with it. */
  private Replay replay(Journaled table, long key) {
    Replay replay = new Replay(table, key);
    store.entries(
        sql,
        entries ->
            List.copyOf(entries).stream()
                .map(CheckedEntry::of)
                .forEach(
                    entry -> {
                      if (entry.body() != null) {
                        replay.read(entry.body());
                      }
                    }));
    return replay;
  }
}
