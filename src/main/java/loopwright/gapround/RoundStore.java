package loopwright.gapround;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.GAP_ROUND;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.GapRoundRecord;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;

/** Gap rounds as they were brought in. Insert-only. */
final class RoundStore {

  /** As kept. */
  record Round(
      long id,
      String name,
      int rows,
      int fresh,
      int unmatched,
      List<String> unmatchedTags,
      long change,
      String who,
      Instant at) {}

  long add(Tx tx, String name, int rows, int fresh, int unmatched, List<String> tags) {
    GapRoundRecord row = tx.row(GAP_ROUND);
    row.setName(name);
    row.setRowsRead(rows);
    row.setRowsNew(fresh);
    row.setRowsUnmatched(unmatched);
    row.setUnmatchedTags(String.join("\n", tags));
    return tx.insert(row).getId();
  }

  Optional<Round> one(DSLContext sql, long id) {
    return fetch(sql, GAP_ROUND.ID.eq(id), 1).stream().findFirst();
  }

  /** Newest first. */
  List<Round> before(DSLContext sql, long id, int most) {
    return fetch(sql, GAP_ROUND.ID.lt(id), most);
  }

  private static List<Round> fetch(DSLContext sql, Condition which, int most) {
    return sql.select(GAP_ROUND.asterisk(), CHANGE.ACTOR_NAME, CHANGE.MADE_AT)
        .from(GAP_ROUND)
        .join(CHANGE)
        .on(CHANGE.ID.eq(GAP_ROUND.CHANGE_ID))
        .where(which)
        .orderBy(GAP_ROUND.ID.desc())
        .limit(most)
        .fetch(RoundStore::round);
  }

  private static Round round(Record row) {
    return new Round(
        row.get(GAP_ROUND.ID),
        row.get(GAP_ROUND.NAME),
        row.get(GAP_ROUND.ROWS_READ),
        row.get(GAP_ROUND.ROWS_NEW),
        row.get(GAP_ROUND.ROWS_UNMATCHED),
        row.get(GAP_ROUND.UNMATCHED_TAGS).lines().filter(line -> !line.isBlank()).toList(),
        row.get(GAP_ROUND.CHANGE_ID),
        row.get(CHANGE.ACTOR_NAME),
        row.get(CHANGE.MADE_AT).toInstant());
  }
}
