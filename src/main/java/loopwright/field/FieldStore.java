package loopwright.field;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.FIELD_DECISION;
import static loopwright.db.gen.Tables.FIELD_DEVICE;
import static loopwright.db.gen.Tables.FIELD_DEVICE_ENDED;
import static loopwright.db.gen.Tables.FIELD_DEVICE_SEEN;
import static loopwright.db.gen.Tables.FIELD_ENTRY;
import static loopwright.db.gen.Tables.FIELD_PHOTO;
import static loopwright.db.gen.Tables.OUTAGE;
import static loopwright.db.gen.Tables.PERSON;
import static loopwright.db.gen.Tables.POINT;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import loopwright.db.Tx;
import loopwright.db.gen.tables.Change;
import loopwright.db.gen.tables.Person;
import loopwright.db.gen.tables.records.FieldDecisionRecord;
import loopwright.db.gen.tables.records.FieldDeviceEndedRecord;
import loopwright.db.gen.tables.records.FieldDeviceRecord;
import loopwright.db.gen.tables.records.FieldEntryRecord;
import loopwright.db.gen.tables.records.FieldPhotoRecord;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;

/** Devices, what they sent and what was decided about it. */
final class FieldStore {
  static final int MOST_TOLD = 4000;
  private static final Person ENDER = PERSON.as("ender");
  private static final Change DECIDED = CHANGE.as("decided");
  private static final int NEWEST = 500;

  long addDevice(Tx tx, long outage, long person, String label, String hash, Instant expires) {
    FieldDeviceRecord row = tx.row(FIELD_DEVICE);
    row.setOutageId(outage);
    row.setPersonId(person);
    row.setLabel(label);
    row.setTokenHash(hash);
    row.setTakenAt(Tx.moment(tx.at()));
    row.setExpiresAt(Tx.moment(expires));
    return tx.insert(row).getId();
  }

  void end(Tx tx, long device, long person, String reason) {
    FieldDeviceEndedRecord row = tx.row(FIELD_DEVICE_ENDED);
    row.setFieldDeviceId(device);
    row.setPersonId(person);
    row.setReason(reason);
    tx.insert(row);
  }

  /** Newest first. */
  List<Device> devices(DSLContext sql, long outage) {
    return devices(sql, FIELD_DEVICE.OUTAGE_ID.eq(outage));
  }

  Optional<Device> device(DSLContext sql, long id) {
    return devices(sql, FIELD_DEVICE.ID.eq(id)).stream().findFirst();
  }

  Optional<Device> withToken(DSLContext sql, String hash) {
    return devices(sql, FIELD_DEVICE.TOKEN_HASH.eq(hash)).stream().findFirst();
  }

  private static List<Device> devices(DSLContext sql, Condition which) {
    return sql.select(FIELD_DEVICE.asterisk())
        .select(PERSON.FULL_NAME, FIELD_DEVICE_SEEN.SEEN_AT)
        .select(FIELD_DEVICE_ENDED.REASON, ENDER.FULL_NAME)
        .from(FIELD_DEVICE)
        .join(PERSON)
        .on(PERSON.ID.eq(FIELD_DEVICE.PERSON_ID))
        .leftJoin(FIELD_DEVICE_SEEN)
        .on(FIELD_DEVICE_SEEN.FIELD_DEVICE_ID.eq(FIELD_DEVICE.ID))
        .leftJoin(FIELD_DEVICE_ENDED)
        .on(FIELD_DEVICE_ENDED.FIELD_DEVICE_ID.eq(FIELD_DEVICE.ID))
        .leftJoin(ENDER)
        .on(ENDER.ID.eq(FIELD_DEVICE_ENDED.PERSON_ID))
        .where(which)
        .orderBy(FIELD_DEVICE.ID.desc())
        .limit(NEWEST)
        .fetch(FieldStore::device);
  }

  private static Device device(Record row) {
    OffsetDateTime seen = row.get(FIELD_DEVICE_SEEN.SEEN_AT);
    return new Device(
        row.get(FIELD_DEVICE.ID),
        row.get(FIELD_DEVICE.OUTAGE_ID),
        row.get(FIELD_DEVICE.PERSON_ID),
        row.get(PERSON.FULL_NAME),
        row.get(FIELD_DEVICE.LABEL),
        row.get(FIELD_DEVICE.TAKEN_AT).toInstant(),
        row.get(FIELD_DEVICE.EXPIRES_AT).toInstant(),
        seen == null ? null : seen.toInstant(),
        row.get(ENDER.FULL_NAME),
        row.get(FIELD_DEVICE_ENDED.REASON));
  }

  /** No record, so outside the journal. */
  void seen(DSLContext sql, long device, Instant at) {
    sql.insertInto(FIELD_DEVICE_SEEN)
        .set(FIELD_DEVICE_SEEN.FIELD_DEVICE_ID, device)
        .set(FIELD_DEVICE_SEEN.SEEN_AT, Tx.moment(at))
        .onDuplicateKeyUpdate()
        .set(FIELD_DEVICE_SEEN.SEEN_AT, Tx.moment(at))
        .execute();
  }

  /**
   * @param state as the table calls it
   */
  long addEntry(Tx tx, Device device, SentEntry sent, long point, String state, String told) {
    String content = sent.written();
    FieldEntryRecord row = tx.row(FIELD_ENTRY);
    row.setClientUuid(sent.uuid());
    row.setFieldDeviceId(device.id());
    row.setOutageId(device.outage());
    row.setPointId(point);
    row.setState(state);
    row.setTold(shortened(told));
    row.setContent(content);
    row.setContentHash(Token.sha256(content));
    return tx.insert(row).getId();
  }

  private static String shortened(String told) {
    return told.length() > MOST_TOLD ? told.substring(0, MOST_TOLD - 1) + "…" : told;
  }

  void decide(Tx tx, long entry, String outcome, long person, String reason, String told) {
    FieldDecisionRecord row = tx.row(FIELD_DECISION);
    row.setFieldEntryId(entry);
    row.setOutcome(outcome);
    row.setPersonId(person);
    row.setReason(reason);
    row.setTold(shortened(told));
    tx.insert(row);
  }

  Optional<Entry> withUuid(DSLContext sql, String uuid) {
    return entries(sql, FIELD_ENTRY.CLIENT_UUID.eq(uuid)).stream().findFirst();
  }

  Optional<Entry> entry(DSLContext sql, long id) {
    return entries(sql, FIELD_ENTRY.ID.eq(id)).stream().findFirst();
  }

  /** Of a pack, newest first. */
  List<Entry> entries(DSLContext sql, long outage) {
    return entries(sql, FIELD_ENTRY.OUTAGE_ID.eq(outage));
  }

  private static List<Entry> entries(DSLContext sql, Condition which) {
    return sql.select(FIELD_ENTRY.asterisk())
        .select(POINT.TAG, FIELD_DEVICE.LABEL, CHANGE.ACTOR_NAME, CHANGE.MADE_AT)
        .select(FIELD_DECISION.OUTCOME, FIELD_DECISION.REASON, FIELD_DECISION.TOLD)
        .select(DECIDED.ACTOR_NAME, DECIDED.MADE_AT)
        .from(FIELD_ENTRY)
        .join(POINT)
        .on(POINT.ID.eq(FIELD_ENTRY.POINT_ID))
        .join(FIELD_DEVICE)
        .on(FIELD_DEVICE.ID.eq(FIELD_ENTRY.FIELD_DEVICE_ID))
        .join(CHANGE)
        .on(CHANGE.ID.eq(FIELD_ENTRY.CHANGE_ID))
        .leftJoin(FIELD_DECISION)
        .on(FIELD_DECISION.FIELD_ENTRY_ID.eq(FIELD_ENTRY.ID))
        .leftJoin(DECIDED)
        .on(DECIDED.ID.eq(FIELD_DECISION.CHANGE_ID))
        .where(which)
        .orderBy(FIELD_ENTRY.ID.desc())
        .limit(NEWEST)
        .fetch(FieldStore::entry);
  }

  private static Entry entry(Record row) {
    String outcome = row.get(FIELD_DECISION.OUTCOME);
    return new Entry(
        row.get(FIELD_ENTRY.ID),
        row.get(FIELD_ENTRY.CLIENT_UUID),
        row.get(FIELD_ENTRY.OUTAGE_ID),
        row.get(FIELD_ENTRY.POINT_ID),
        row.get(POINT.TAG),
        row.get(FIELD_DEVICE.LABEL),
        row.get(CHANGE.ACTOR_NAME),
        row.get(FIELD_ENTRY.STATE).equals("recorded"),
        row.get(FIELD_ENTRY.TOLD),
        SentEntry.kept(row.get(FIELD_ENTRY.CONTENT)),
        row.get(FIELD_ENTRY.CONTENT_HASH),
        row.get(CHANGE.MADE_AT).toInstant(),
        outcome == null
            ? null
            : new Entry.Decision(
                outcome.equals("recorded"),
                row.get(DECIDED.ACTOR_NAME),
                row.get(DECIDED.MADE_AT).toInstant(),
                row.get(FIELD_DECISION.REASON),
                row.get(FIELD_DECISION.TOLD)));
  }

  /** An outage with entries that wait for somebody. */
  record Waiting(long outage, String name, int entries, Instant since) {}

  List<Waiting> waiting(DSLContext sql) {
    var count = org.jooq.impl.DSL.count();
    var since = org.jooq.impl.DSL.min(CHANGE.MADE_AT);
    return sql.select(OUTAGE.ID, OUTAGE.NAME, count, since)
        .from(FIELD_ENTRY)
        .join(OUTAGE)
        .on(OUTAGE.ID.eq(FIELD_ENTRY.OUTAGE_ID))
        .join(CHANGE)
        .on(CHANGE.ID.eq(FIELD_ENTRY.CHANGE_ID))
        .leftJoin(FIELD_DECISION)
        .on(FIELD_DECISION.FIELD_ENTRY_ID.eq(FIELD_ENTRY.ID))
        .where(FIELD_ENTRY.STATE.eq("waits").and(FIELD_DECISION.FIELD_ENTRY_ID.isNull()))
        .groupBy(OUTAGE.ID, OUTAGE.NAME)
        .orderBy(OUTAGE.ID)
        .fetch(
            row ->
                new Waiting(
                    row.get(OUTAGE.ID),
                    row.get(OUTAGE.NAME),
                    row.get(count),
                    row.get(since).toInstant()));
  }

  Optional<Long> photo(DSLContext sql, String uuid) {
    return sql.select(FIELD_PHOTO.ATTACHMENT_ID)
        .from(FIELD_PHOTO)
        .where(FIELD_PHOTO.CLIENT_UUID.eq(uuid))
        .fetchOptional(FIELD_PHOTO.ATTACHMENT_ID);
  }

  void addPhoto(Tx tx, Device device, String uuid, long point, long attachment) {
    FieldPhotoRecord row = tx.row(FIELD_PHOTO);
    row.setClientUuid(uuid);
    row.setFieldDeviceId(device.id());
    row.setPointId(point);
    row.setAttachmentId(attachment);
    tx.insert(row);
  }
}
