package loopwright.db;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import loopwright.problem.Refused;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.Table;
import org.jooq.TableField;
import org.jooq.UniqueKey;
import org.jooq.UpdatableRecord;
import org.jooq.impl.DSL;

/**
 * The inside of one write: one actor, one reason, one transaction, one journaled change. Only
 * {@link Database#write} makes one, so whoever holds one is inside the door. Rows written through
 * {@link #insert}, {@link #update} and {@link #delete} are journaled; {@link #sql} is for reading,
 * and for derived tables that can be worked out again.
 */
public final class Tx {
  /** So many facts make one journal entry; a larger change is written as several. */
  private static final int FACTS_PER_ENTRY = 2_000;

  private final DSLContext sql;
  private final ChangeLog log;
  private final Act act;
  private final Instant at;
  private final long changeId;
  private final List<Fact> facts = new ArrayList<>();
  private final Map<Derivation, Set<Long>> stale = new LinkedHashMap<>();
  private int part;

  Tx(DSLContext sql, ChangeLog log, Act act, Instant at, long changeId) {
    this.sql = sql;
    this.log = log;
    this.act = act;
    this.at = at;
    this.changeId = changeId;
  }

  public DSLContext sql() {
    return sql;
  }

  public Act act() {
    return act;
  }

  /** When this change is made, to the microsecond. */
  public Instant at() {
    return at;
  }

  public long changeId() {
    return changeId;
  }

  /** A new, empty row bound to this transaction. */
  public <R extends UpdatableRecord<R>> R row(Table<R> table) {
    return sql.newRecord(table);
  }

  /** Inserts the row, with this change as its maker, and reads back what the database filled in. */
  public <R extends UpdatableRecord<R>> R insert(R row) {
    stamp(row);
    row.insert();
    Map<String, String> texts = RowText.of(row);
    remember(
        new Fact(
            "insert", name(row), key(row), Map.of(), List.of(texts), RowText.hash(List.of(texts))));
    return row;
  }

  /**
   * Inserts rows that belong to one parent and are journaled as one fact under its key. All columns
   * must be set.
   */
  public <R extends UpdatableRecord<R>> void insertGroup(long parent, Collection<R> rows) {
    if (rows.isEmpty()) {
      return;
    }
    sql.batchInsert(rows).execute();
    List<Map<String, String>> texts = rows.stream().map(RowText::of).toList();
    String table = name(rows.iterator().next());
    remember(
        new Fact(
            "insert group", table, Long.toString(parent), Map.of(), texts, RowText.hash(texts)));
  }

  /**
   * Writes the changed columns of a row that was read in this transaction, and reads back what the
   * database made of them (it rounds). A row with a version is written only if nobody wrote it
   * meanwhile.
   *
   * @throws Refused {@link DbProblem#STALE} if somebody did
   */
  public <R extends UpdatableRecord<R>> void update(R row) {
    if (!row.changed()) {
      return;
    }
    stamp(row);
    Condition same = sameRow(row);
    Field<Integer> version = field(row, "version", Integer.class);
    if (version != null) {
      Integer original = row.original(version);
      same = same.and(version.eq(original));
      row.set(version, original + 1);
    }
    List<Field<?>> changed = Stream.of(row.fields()).filter(row::changed).toList();
    Map<String, String> before = new TreeMap<>();
    changed.forEach(field -> RowText.put(before, field, row.original(field)));
    Optional<R> written =
        sql.update(row.getTable()).set(row).where(same).returning().fetchOptional();
    row.from(written.orElseThrow(() -> new Refused(DbProblem.STALE)));
    row.changed(false);
    Map<String, String> after = new TreeMap<>();
    changed.forEach(field -> RowText.put(after, field, row.get(field)));
    Map<String, String> told = Map.copyOf(before);
    before.entrySet().removeAll(Map.copyOf(after).entrySet()); // what came to the same is no change
    after.entrySet().removeAll(told.entrySet());
    String hash = RowText.hash(List.of(RowText.of(row)));
    remember(new Fact("update", name(row), key(row), before, List.of(after), hash));
  }

  /** Removes a row of a table whose rows may go (drafts); the journal keeps what it held. */
  public <R extends UpdatableRecord<R>> void delete(R row) {
    sql.deleteFrom(row.getTable()).where(sameRow(row)).execute();
    remember(new Fact("delete", name(row), key(row), RowText.of(row), List.of(), ""));
  }

  /**
   * Has something worked out again at the end of this change, once, however often it is asked for.
   *
   * @param which numbers of what is out of date
   */
  public void deriveAtEnd(Derivation derivation, Collection<Long> which) {
    stale.computeIfAbsent(derivation, fresh -> new TreeSet<>()).addAll(which);
  }

  void finish() {
    stale.forEach((derivation, which) -> derivation.workOut(sql, which));
    part++;
    log.append(sql, changeId, act, at, part, true, List.copyOf(facts));
    facts.clear();
  }

  private void remember(Fact fact) {
    facts.add(fact);
    if (facts.size() == FACTS_PER_ENTRY) {
      part++;
      log.append(sql, changeId, act, at, part, false, List.copyOf(facts));
      facts.clear();
    }
  }

  private void stamp(Record row) {
    Field<Long> change = field(row, "change_id", Long.class);
    if (change != null) {
      row.set(change, changeId);
    }
  }

  private static <R extends UpdatableRecord<R>> Condition sameRow(R row) {
    Condition same = DSL.noCondition();
    for (TableField<R, ?> field : primaryKey(row).getFields()) {
      same = same.and(equal(field, row));
    }
    return same;
  }

  private static <R extends Record, T> Condition equal(TableField<R, T> field, R row) {
    return field.eq(row.original(field));
  }

  private static <R extends UpdatableRecord<R>> String key(R row) {
    List<String> parts = new ArrayList<>();
    for (TableField<R, ?> field : primaryKey(row).getFields()) {
      parts.add(String.valueOf(row.get(field)));
    }
    return String.join("/", parts);
  }

  private static <R extends UpdatableRecord<R>> UniqueKey<R> primaryKey(R row) {
    UniqueKey<R> key = row.getTable().getPrimaryKey();
    if (key == null) {
      throw new IllegalStateException(row.getTable() + " has no primary key");
    }
    return key;
  }

  @SuppressWarnings("NullAway") // jOOQ answers null for a column that the table lacks
  private static <T> Field<T> field(Record row, String name, Class<T> type) {
    for (Field<?> field : row.fields()) {
      if (field.getName().equalsIgnoreCase(name)) {
        return field.coerce(type);
      }
    }
    return null;
  }

  private static String name(UpdatableRecord<?> row) {
    return row.getTable().getName().toLowerCase(Locale.ROOT);
  }

  /** A moment as rows hold it. */
  public static OffsetDateTime moment(Instant instant) {
    return instant.atOffset(ZoneOffset.UTC);
  }
}
