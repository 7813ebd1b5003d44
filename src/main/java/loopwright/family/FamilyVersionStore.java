package loopwright.family;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.FAMILY_VERSION;
import static loopwright.db.gen.Tables.JOURNAL_ENTRY;

import java.util.List;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.FamilyVersionRecord;
import loopwright.register.ChangeNote;
import loopwright.register.FamilyId;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.impl.DSL;

/** Versions of families. */
final class FamilyVersionStore {
  private static final Field<Long> ENTRY =
      DSL.field(
              DSL.select(DSL.max(JOURNAL_ENTRY.SEQ))
                  .from(JOURNAL_ENTRY)
                  .where(JOURNAL_ENTRY.CHANGE_ID.eq(FAMILY_VERSION.CHANGE_ID)))
          .as("known_since");

  /**
   * The newest version.
   *
   * @param number 0 if there is none
   */
  record Last(int number, String content) {}

  Last last(DSLContext sql, FamilyId family) {
    return sql.selectFrom(FAMILY_VERSION)
        .where(FAMILY_VERSION.FAMILY_ID.eq(family.number()))
        .orderBy(FAMILY_VERSION.VERSION_NO.desc())
        .limit(1)
        .fetchOptional(row -> new Last(row.getVersionNo(), row.getContent()))
        .orElse(new Last(0, ""));
  }

  List<FamilyVersion> of(DSLContext sql, FamilyId family) {
    return sql.select(FAMILY_VERSION.asterisk(), CHANGE.asterisk(), ENTRY)
        .from(FAMILY_VERSION)
        .join(CHANGE)
        .on(CHANGE.ID.eq(FAMILY_VERSION.CHANGE_ID))
        .where(FAMILY_VERSION.FAMILY_ID.eq(family.number()))
        .orderBy(FAMILY_VERSION.VERSION_NO.desc())
        .fetch(FamilyVersionStore::version);
  }

  private static FamilyVersion version(Record row) {
    return new FamilyVersion(
        row.get(FAMILY_VERSION.VERSION_NO),
        FamilyContent.read(row.get(FAMILY_VERSION.CONTENT)),
        row.get(ENTRY),
        new ChangeNote(
            row.get(CHANGE.ID),
            row.get(CHANGE.MADE_AT).toInstant(),
            row.get(CHANGE.ACTOR_NAME),
            row.get(CHANGE.WHAT),
            row.get(CHANGE.REASON)));
  }

  void insert(Tx tx, FamilyId family, int number, String content) {
    FamilyVersionRecord row = tx.row(FAMILY_VERSION);
    row.setFamilyId(family.number());
    row.setVersionNo(number);
    row.setContent(content);
    tx.insert(row);
  }
}
