package loopwright.journal;

import static loopwright.db.gen.Tables.JOURNAL_ENTRY;
import static loopwright.db.gen.Tables.JOURNAL_HEAD;
import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import loopwright.db.Database;
import loopwright.db.Journaled;
import loopwright.db.Owner;
import loopwright.testing.Engine;
import loopwright.testing.FullWorld;
import loopwright.testing.TestClock;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.Table;
import org.jooq.impl.DSL;

/** A filled database and somebody who changes it behind the program's back. */
final class Tampering implements AutoCloseable {
  final Database database;
  final Owner owner;

  Tampering(Engine engine) {
    database = engine.open(new TestClock("2026-03-01T10:15:30.123456789Z"));
    FullWorld.fill(database);
    owner = new Owner(database);
    owner.disarm();
  }

  Disagreement disagreement() {
    Verdict verdict = Verification.of(database);
    assertThat(verdict.agrees()).as("what was changed must show").isFalse();
    return verdict.disagreement();
  }

  void assertAgrees() {
    assertThat(Verification.of(database).disagreement()).isNull();
  }

  <T> void set(Table<?> table, Condition which, Field<T> column, T content) {
    int changed =
        owner.secretly(sql -> sql.update(table).set(column, content).where(which).execute());
    assertThat(changed).isEqualTo(1);
  }

  void insert(Table<?> table, Record row) {
    owner.secretly(sql -> insert(sql, table, row));
  }

  private static <R extends Record> int insert(DSLContext sql, Table<R> table, Record row) {
    return sql.insertInto(table).columns(row.fields()).values(row.intoArray()).execute();
  }

  void delete(Table<?> table, Condition which) {
    assertThat(owner.<Integer>secretly(sql -> sql.deleteFrom(table).where(which).execute()))
        .isEqualTo(1);
  }

  Record entry(long seq) {
    return owner.secretly(sql -> sql.fetchSingle(JOURNAL_ENTRY, JOURNAL_ENTRY.SEQ.eq(seq)));
  }

  Record lastRow(Journaled table) {
    return owner.secretly(
        sql ->
            sql.selectFrom(table.table())
                .orderBy(table.order().stream().map(Field::desc).toList())
                .limit(1)
                .fetchSingle());
  }

  /** The nearest other content. */
  static Object flipped(Object was) {
    if (was instanceof String text) {
      return text.isEmpty() ? "~" : text.substring(1) + "~";
    } else if (was instanceof Boolean yes) {
      return !yes;
    } else if (was instanceof OffsetDateTime moment) {
      return moment.plus(moment.getYear() == 9999 ? -1 : 1, ChronoUnit.MICROS);
    } else if (was instanceof LocalDate day) {
      return day.plusDays(1);
    } else if (was instanceof BigDecimal number) {
      return number.add(BigDecimal.ONE.movePointLeft(number.scale()));
    } else if (was instanceof Double number) {
      return Math.nextUp(number);
    } else if (was instanceof Number number) {
      return number.longValue() + 1;
    } else if (was instanceof byte[] bytes) {
      byte[] other = bytes.clone();
      other[other.length / 2] ^= 1;
      return other;
    }
    throw new IllegalArgumentException(was.getClass() + " has no neighbour here");
  }

  static Condition sameRow(Journaled table, Record row) {
    Condition same = DSL.noCondition();
    for (Field<?> field : table.order()) {
      same = same.and(equal(field, row));
    }
    return same;
  }

  private static <T> Condition equal(Field<T> field, Record row) {
    return field.eq(row.get(field));
  }

  static String name(Field<?> column) {
    return column.getName().toLowerCase(Locale.ROOT);
  }

  /**
   * Rewrites one entry's content and works out the whole chain and the head anew, as a forger
   * would; afterwards puts everything back.
   */
  Disagreement forged(long seq, UnaryOperator<String> rewriting) {
    List<? extends Record> were =
        owner.secretly(sql -> sql.selectFrom(JOURNAL_ENTRY).orderBy(JOURNAL_ENTRY.SEQ).fetch());
    byte[] head = owner.secretly(sql -> sql.fetchSingle(JOURNAL_HEAD).getChainHash());
    byte[] chain = Hashes.BEFORE_THE_FIRST;
    for (Record row : were) {
      byte[] body = row.get(JOURNAL_ENTRY.BODY);
      if (row.get(JOURNAL_ENTRY.SEQ) == seq) {
        String other = rewriting.apply(new String(body, StandardCharsets.UTF_8));
        assertThat(other).isNotEqualTo(new String(body, StandardCharsets.UTF_8));
        body = other.getBytes(StandardCharsets.UTF_8);
      }
      byte[] leaf = Hashes.leaf(body);
      chain = Hashes.chain(chain, leaf);
      write(row.get(JOURNAL_ENTRY.SEQ), body, leaf, chain);
    }
    set(JOURNAL_HEAD, DSL.noCondition(), JOURNAL_HEAD.CHAIN_HASH, chain);
    try {
      return disagreement();
    } finally {
      were.forEach(this::write);
      set(JOURNAL_HEAD, DSL.noCondition(), JOURNAL_HEAD.CHAIN_HASH, head);
    }
  }

  private void write(Record row) {
    write(
        row.get(JOURNAL_ENTRY.SEQ),
        row.get(JOURNAL_ENTRY.BODY),
        row.get(JOURNAL_ENTRY.LEAF_HASH),
        row.get(JOURNAL_ENTRY.CHAIN_HASH));
  }

  private void write(long seq, byte[] body, byte[] leaf, byte[] chain) {
    owner.secretly(
        sql ->
            sql.update(JOURNAL_ENTRY)
                .set(JOURNAL_ENTRY.BODY, body)
                .set(JOURNAL_ENTRY.LEAF_HASH, leaf)
                .set(JOURNAL_ENTRY.CHAIN_HASH, chain)
                .where(JOURNAL_ENTRY.SEQ.eq(seq))
                .execute());
  }

  @Override
  public void close() {
    owner.close();
    database.close();
  }
}
