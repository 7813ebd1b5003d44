package loopwright.pack;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.PACK_LOOP;
import static loopwright.db.gen.Tables.PACK_RETURN;
import static loopwright.db.gen.Tables.PACK_REVISION;
import static loopwright.db.gen.Tables.PERSON;
import static loopwright.db.gen.Tables.POINT;

import java.util.List;
import java.util.Map;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.PackLoopRecord;
import loopwright.db.gen.tables.records.PackReturnRecord;
import loopwright.db.gen.tables.records.PackRevisionRecord;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.impl.DSL;

/** Revisions of packs, their sheets, and what came back. Insert-only. */
final class PackStore {

  long add(Tx tx, long outage, int number, long person, String note, String head, String hash) {
    PackRevisionRecord row = tx.row(PACK_REVISION);
    row.setOutageId(outage);
    row.setRevisionNo(number);
    row.setPersonId(person);
    row.setIssuedAt(Tx.moment(tx.at()));
    row.setNote(note);
    row.setHead(head);
    row.setHash(hash);
    return tx.insert(row).getId();
  }

  void addLoop(Tx tx, long revision, int place, long point, String content, String hash) {
    PackLoopRecord row = tx.row(PACK_LOOP);
    row.setPackRevisionId(revision);
    row.setPlaceNo(place);
    row.setPointId(point);
    row.setContent(content);
    row.setHash(hash);
    tx.insert(row);
  }

  /** Newest first. */
  List<Revision> revisions(DSLContext sql, long outage) {
    return sql.select(PACK_REVISION.asterisk())
        .select(PERSON.FULL_NAME)
        .from(PACK_REVISION)
        .join(PERSON)
        .on(PERSON.ID.eq(PACK_REVISION.PERSON_ID))
        .where(PACK_REVISION.OUTAGE_ID.eq(outage))
        .orderBy(PACK_REVISION.REVISION_NO.desc())
        .fetch(PackStore::revision);
  }

  private static Revision revision(Record row) {
    return new Revision(
        row.get(PACK_REVISION.ID),
        row.get(PACK_REVISION.OUTAGE_ID),
        row.get(PACK_REVISION.REVISION_NO),
        row.get(PERSON.FULL_NAME),
        row.get(PACK_REVISION.ISSUED_AT).toInstant(),
        row.get(PACK_REVISION.NOTE),
        Frozen.read(row.get(PACK_REVISION.HEAD), Revision.Head.class),
        row.get(PACK_REVISION.HASH));
  }

  /** In the order of the pack. */
  List<Revision.Loop> loops(DSLContext sql, long revision) {
    return sql.selectFrom(PACK_LOOP)
        .where(PACK_LOOP.PACK_REVISION_ID.eq(revision))
        .orderBy(PACK_LOOP.PLACE_NO)
        .fetch(
            row ->
                new Revision.Loop(
                    row.getId(),
                    row.getPlaceNo(),
                    row.getPointId(),
                    Frozen.read(row.getContent(), LoopSheet.class),
                    row.getHash()));
  }

  /** The sheets of a revision as they were frozen, by point. */
  Map<Long, String> contents(DSLContext sql, long revision) {
    return sql.select(PACK_LOOP.POINT_ID, PACK_LOOP.CONTENT)
        .from(PACK_LOOP)
        .where(PACK_LOOP.PACK_REVISION_ID.eq(revision))
        .fetchMap(PACK_LOOP.POINT_ID, PACK_LOOP.CONTENT);
  }

  /** By point, the newest change that brought something back. */
  Map<Long, Long> lastReturned(DSLContext sql, long outage) {
    Field<Long> last = DSL.max(PACK_RETURN.CHANGE_ID).as("last_change");
    return sql.select(PACK_RETURN.POINT_ID, last)
        .from(PACK_RETURN)
        .where(PACK_RETURN.OUTAGE_ID.eq(outage))
        .groupBy(PACK_RETURN.POINT_ID)
        .fetchMap(PACK_RETURN.POINT_ID, last);
  }

  void addReturn(Tx tx, long outage, Returned returned) {
    PackReturnRecord row = tx.row(PACK_RETURN);
    row.setOutageId(outage);
    row.setPointId(returned.point());
    row.setPackLoopId(returned.packLoop());
    row.setOutcome(returned.outcome());
    row.setReason(returned.reason());
    row.setDoneBy(returned.doneBy());
    row.setFoundGapVolts(returned.foundGapVolts());
    row.setLeftGapVolts(returned.leftGapVolts());
    row.setFoundCalibration(returned.foundCalibration());
    row.setLeftCalibration(returned.leftCalibration());
    row.setTold(returned.told());
    row.setCellsHash(returned.cellsHash());
    row.setFileName(returned.fileName());
    tx.insert(row);
  }

  /** All that came back, oldest first. */
  List<Returned> returns(DSLContext sql, long outage) {
    return sql.select(PACK_RETURN.asterisk())
        .select(POINT.TAG, CHANGE.ACTOR_NAME, CHANGE.MADE_AT)
        .from(PACK_RETURN)
        .join(POINT)
        .on(POINT.ID.eq(PACK_RETURN.POINT_ID))
        .join(CHANGE)
        .on(CHANGE.ID.eq(PACK_RETURN.CHANGE_ID))
        .where(PACK_RETURN.OUTAGE_ID.eq(outage))
        .orderBy(PACK_RETURN.ID)
        .fetch(PackStore::returned);
  }

  private static Returned returned(Record row) {
    return new Returned(
        row.get(PACK_RETURN.POINT_ID),
        row.get(POINT.TAG),
        row.get(PACK_RETURN.PACK_LOOP_ID),
        row.get(PACK_RETURN.OUTCOME),
        row.get(PACK_RETURN.REASON),
        row.get(PACK_RETURN.DONE_BY),
        row.get(PACK_RETURN.FOUND_GAP_VOLTS),
        row.get(PACK_RETURN.LEFT_GAP_VOLTS),
        row.get(PACK_RETURN.FOUND_CALIBRATION),
        row.get(PACK_RETURN.LEFT_CALIBRATION),
        row.get(PACK_RETURN.TOLD),
        row.get(PACK_RETURN.CELLS_HASH),
        row.get(PACK_RETURN.FILE_NAME),
        row.get(CHANGE.ACTOR_NAME),
        row.get(CHANGE.MADE_AT).toInstant());
  }
}
