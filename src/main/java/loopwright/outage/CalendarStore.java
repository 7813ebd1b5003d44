package loopwright.outage;

import static loopwright.db.gen.Tables.CALENDAR_ADDRESS;

import java.time.Instant;
import java.util.Optional;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.CalendarAddressRecord;
import org.jooq.DSLContext;

/** Secret addresses of calendars, by the hash of what is secret in them. */
final class CalendarStore {

  /** Takes the place of the one before. */
  void put(Tx tx, long person, String hash) {
    remove(tx, person);
    CalendarAddressRecord row = tx.row(CALENDAR_ADDRESS);
    row.setPersonId(person);
    row.setTokenHash(hash);
    row.setMadeAt(Tx.moment(tx.at()));
    tx.insert(row);
  }

  /** Whether there was one. */
  boolean remove(Tx tx, long person) {
    Optional<CalendarAddressRecord> row =
        tx.sql().fetchOptional(CALENDAR_ADDRESS, CALENDAR_ADDRESS.PERSON_ID.eq(person));
    row.ifPresent(tx::delete);
    return row.isPresent();
  }

  Optional<Instant> madeAt(DSLContext sql, long person) {
    return sql.fetchOptional(CALENDAR_ADDRESS, CALENDAR_ADDRESS.PERSON_ID.eq(person))
        .map(row -> row.getMadeAt().toInstant());
  }

  Optional<Long> person(DSLContext sql, String hash) {
    return sql.fetchOptional(CALENDAR_ADDRESS, CALENDAR_ADDRESS.TOKEN_HASH.eq(hash))
        .map(CalendarAddressRecord::getPersonId);
  }
}
