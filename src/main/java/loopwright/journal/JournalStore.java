package loopwright.journal;

import static loopwright.db.gen.Tables.JOURNAL_ENTRY;
import static loopwright.db.gen.Tables.JOURNAL_HEAD;

import java.time.Instant;
import java.util.List;
import loopwright.db.Act;
import loopwright.db.ChangeLog;
import loopwright.db.Fact;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.JournalHeadRecord;
import org.jooq.DSLContext;

/** Appends changes to the journal. The number comes from one locked row, so it is gapless. */
public final class JournalStore implements ChangeLog {
  private static final short HEAD = 1;

  @Override
  public void prepare(DSLContext sql) {
    if (sql.fetchExists(JOURNAL_HEAD)) {
      return;
    }
    sql.insertInto(JOURNAL_HEAD)
        .set(JOURNAL_HEAD.ID, HEAD)
        .set(JOURNAL_HEAD.SEQ, 0L)
        .set(JOURNAL_HEAD.CHAIN_HASH, Hashes.BEFORE_THE_FIRST)
        .execute();
  }

  /** The number of the last entry; 0 while there is none. */
  public static long head(DSLContext sql) {
    return sql.selectFrom(JOURNAL_HEAD).where(JOURNAL_HEAD.ID.eq(HEAD)).fetchSingle().getSeq();
  }

  /** The same, and nobody else appends until this transaction ends. */
  public static long lockedHead(DSLContext sql) {
    return sql.selectFrom(JOURNAL_HEAD)
        .where(JOURNAL_HEAD.ID.eq(HEAD))
        .forUpdate()
        .fetchSingle()
        .getSeq();
  }

  @Override
  public void append(
      DSLContext sql,
      long changeId,
      Act act,
      Instant at,
      int part,
      boolean last,
      List<Fact> facts) {
    JournalHeadRecord head =
        sql.selectFrom(JOURNAL_HEAD).where(JOURNAL_HEAD.ID.eq(HEAD)).forUpdate().fetchSingle();
    long seq = head.getSeq() + 1;
    byte[] body = Entry.canonical(seq, changeId, act, at, part, last, facts);
    byte[] leaf = Hashes.leaf(body);
    byte[] chain = Hashes.chain(head.getChainHash(), leaf);
    sql.insertInto(JOURNAL_ENTRY)
        .set(JOURNAL_ENTRY.SEQ, seq)
        .set(JOURNAL_ENTRY.CHANGE_ID, changeId)
        .set(JOURNAL_ENTRY.PART, part)
        .set(JOURNAL_ENTRY.IS_LAST, last)
        .set(JOURNAL_ENTRY.RECORDED_AT, Tx.moment(at))
        .set(JOURNAL_ENTRY.BODY, body)
        .set(JOURNAL_ENTRY.LEAF_HASH, leaf)
        .set(JOURNAL_ENTRY.CHAIN_HASH, chain)
        .execute();
    sql.update(JOURNAL_HEAD)
        .set(JOURNAL_HEAD.SEQ, seq)
        .set(JOURNAL_HEAD.CHAIN_HASH, chain)
        .where(JOURNAL_HEAD.ID.eq(HEAD))
        .execute();
  }
}
