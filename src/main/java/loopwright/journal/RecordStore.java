package loopwright.journal;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.JOURNAL_ENTRY;
import static loopwright.db.gen.Tables.JOURNAL_HEAD;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import loopwright.db.Tx;
import loopwright.time.SiteMoment;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.OrderField;
import org.jooq.Record;
import org.jooq.TableField;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;

/** Reads the record for people. */
final class RecordStore {
  private static final int MOST_CHOICES = 200;

  /**
   * One change in the list.
   *
   * @param seq number of the entry that completed it
   */
  record Listed(
      long seq, long change, Instant at, String actor, String role, String what, String reason) {
    RecordFilter.Position position() {
      return new RecordFilter.Position(at, change);
    }
  }

  /**
   * The journal's head.
   *
   * @param hash hex
   */
  record Head(long seq, String hash) {}

  Head head(DSLContext sql) {
    return sql.selectFrom(JOURNAL_HEAD)
        .fetchSingle(row -> new Head(row.getSeq(), HexFormat.of().formatHex(row.getChainHash())));
  }

  /** Newest first. Each combination of filters is served from an index. */
  List<Listed> list(DSLContext sql, RecordFilter filter, ZoneId zone, int limit) {
    // the keys first, by index: joined to the entries the engine would sort all of them
    List<Long> changes =
        sql.select(CHANGE.ID)
            .from(CHANGE)
            .where(condition(filter, zone))
            .andExists(
                DSL.selectOne()
                    .from(JOURNAL_ENTRY)
                    .where(JOURNAL_ENTRY.CHANGE_ID.eq(CHANGE.ID))
                    .and(JOURNAL_ENTRY.IS_LAST.isTrue()))
            .orderBy(order(filter))
            .limit(limit)
            .fetch(CHANGE.ID);
    return sql.select(CHANGE.fields())
        .select(JOURNAL_ENTRY.SEQ)
        .from(CHANGE)
        .join(JOURNAL_ENTRY)
        .on(JOURNAL_ENTRY.CHANGE_ID.eq(CHANGE.ID).and(JOURNAL_ENTRY.IS_LAST.isTrue()))
        .where(CHANGE.ID.in(changes))
        .orderBy(order(filter))
        .fetch(RecordStore::listed);
  }

  private static Condition condition(RecordFilter filter, ZoneId zone) {
    Condition which = DSL.noCondition();
    if (filter.actor().isPresent()) {
      which = which.and(CHANGE.ACTOR_NAME.eq(filter.actor().get()));
    }
    if (filter.what().isPresent()) {
      which = which.and(CHANGE.WHAT.eq(filter.what().get()));
    }
    if (filter.day().isPresent()) {
      Instant from = SiteMoment.startOf(filter.day().get(), zone);
      Instant until = SiteMoment.startOf(filter.day().get().plusDays(1), zone);
      which =
          which.and(CHANGE.MADE_AT.ge(Tx.moment(from))).and(CHANGE.MADE_AT.lt(Tx.moment(until)));
    }
    if (filter.before().isPresent()) {
      RecordFilter.Position last = filter.before().get();
      which =
          which
              .and(CHANGE.MADE_AT.le(Tx.moment(last.at())))
              .and(CHANGE.MADE_AT.lt(Tx.moment(last.at())).or(CHANGE.ID.lt(last.change())));
    }
    return which;
  }

  /** The column that is held fixed leads, or the index would not be used for the order. */
  private static List<OrderField<?>> order(RecordFilter filter) {
    List<OrderField<?>> order = new ArrayList<>();
    if (filter.actor().isPresent()) {
      order.add(CHANGE.ACTOR_NAME.desc());
    } else if (filter.what().isPresent()) {
      order.add(CHANGE.WHAT.desc());
    }
    order.add(CHANGE.MADE_AT.desc());
    order.add(CHANGE.ID.desc());
    return order;
  }

  private static Listed listed(Record row) {
    return new Listed(
        row.get(JOURNAL_ENTRY.SEQ),
        row.get(CHANGE.ID),
        row.get(CHANGE.MADE_AT).toInstant(),
        row.get(CHANGE.ACTOR_NAME),
        row.get(CHANGE.ACTOR_ROLE),
        row.get(CHANGE.WHAT),
        row.get(CHANGE.REASON));
  }

  Optional<StoredEntry> entry(DSLContext sql, long seq) {
    return sql.select(JOURNAL_ENTRY.fields())
        .select(CHANGE.fields())
        .from(JOURNAL_ENTRY)
        .join(CHANGE)
        .on(CHANGE.ID.eq(JOURNAL_ENTRY.CHANGE_ID))
        .where(JOURNAL_ENTRY.SEQ.eq(seq))
        .fetchOptional(VerificationStore::entry);
  }

  /** Numbers of all entries of a change, in order. */
  List<Long> parts(DSLContext sql, long change) {
    return sql.select(JOURNAL_ENTRY.SEQ)
        .from(JOURNAL_ENTRY)
        .where(JOURNAL_ENTRY.CHANGE_ID.eq(change))
        .orderBy(JOURNAL_ENTRY.PART)
        .fetch(JOURNAL_ENTRY.SEQ);
  }

  /** Everybody who changed something, by name. */
  List<String> actors(DSLContext sql) {
    return distinct(sql, CHANGE.ACTOR_NAME);
  }

  /** Every kind of act that occurred. */
  List<String> kinds(DSLContext sql) {
    return distinct(sql, CHANGE.WHAT);
  }

  /** From one value to the next by the index, instead of over millions of rows. */
  private static List<String> distinct(DSLContext sql, TableField<?, String> column) {
    List<String> found = new ArrayList<>();
    String next = next(sql, column, DSL.noCondition());
    while (next != null && found.size() < MOST_CHOICES) {
      found.add(next);
      next = next(sql, column, column.gt(next));
    }
    return found;
  }

  private static @Nullable String next(
      DSLContext sql, TableField<?, String> column, Condition after) {
    Field<String> smallest = DSL.min(column);
    return sql.select(smallest).from(CHANGE).where(after).fetchSingle().value1();
  }
}
