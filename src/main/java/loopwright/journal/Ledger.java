package loopwright.journal;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalLong;
import loopwright.db.Fact;
import loopwright.db.Journaled;

/** What the tables must hold, after all facts of the journal so far. */
final class Ledger {
  private final Map<String, LastHashes> tables = new HashMap<>();

  Ledger() {
    Journaled.all().forEach(table -> tables.put(table.name(), new LastHashes()));
  }

  void post(EntryBody entry) {
    entry.facts().forEach(fact -> post(entry.seq(), fact));
  }

  private void post(long entry, Fact fact) {
    long key = Long.parseLong(fact.key());
    LastHashes hashes = of(fact.table());
    boolean inserts = fact.operation().startsWith("insert");
    if (inserts == hashes.has(key)) {
      String fault = inserts ? " a second time." : ", which is not there.";
      throw Disagreement.ofEntry(
              entry, "its " + fact.operation() + " concerns " + row(fact) + fault)
          .found();
    }
    if (!inserts && Journaled.named(fact.table()).insertOnly()) {
      throw Disagreement.ofEntry(
              entry,
              "it holds an "
                  + fact.operation()
                  + " of "
                  + row(fact)
                  + ", but such rows stay for ever.")
          .found();
    }
    if (fact.operation().equals("delete")) {
      hashes.remove(key);
    } else {
      hashes.put(key, fact.hash());
    }
  }

  private static String row(Fact fact) {
    return fact.table().replace('_', ' ') + " " + fact.key();
  }

  /** Takes the row off if it is as it must be. */
  boolean settle(Journaled table, long key, String hash) {
    LastHashes hashes = of(table.name());
    boolean matches = hashes.matches(key, hash);
    if (matches) {
      hashes.remove(key);
    }
    return matches;
  }

  /** The first row that must be there and was not met. */
  OptionalLong firstMissing(Journaled table) {
    return of(table.name()).first();
  }

  private LastHashes of(String table) {
    return Objects.requireNonNull(tables.get(table), table);
  }
}
