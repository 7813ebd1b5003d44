package loopwright.lengthlaw;

import static loopwright.db.gen.Tables.CHANGE;
import static loopwright.db.gen.Tables.FAMILY;
import static loopwright.db.gen.Tables.LAW_EVIDENCE;
import static loopwright.db.gen.Tables.LAW_EVIDENCE_WITHDRAWN;
import static org.jooq.impl.DSL.notExists;
import static org.jooq.impl.DSL.selectOne;

import java.util.List;
import java.util.Map;
import loopwright.db.Tx;
import loopwright.db.gen.tables.records.LawEvidenceRecord;
import loopwright.db.gen.tables.records.LawEvidenceWithdrawnRecord;
import loopwright.matching.Evidence;
import loopwright.units.Length;
import org.jooq.DSLContext;
import org.jooq.Record;

/** Evidence of length laws. Insert-only. */
final class LawStore {

  /**
   * Evidence as it is kept.
   *
   * @param withdrawn why it no longer counts; empty while it does
   */
  record Kept(long id, Taught taught, String who, String withdrawn) {
    boolean counts() {
      return withdrawn.isEmpty();
    }
  }

  void add(Tx tx, long family, Taught taught) {
    LawEvidenceRecord row = tx.row(LAW_EVIDENCE);
    row.setFamilyId(family);
    row.setFoundOn(taught.foundOn());
    row.setLoopTag(taught.tag());
    row.setSystemLengthM(taught.system().metres());
    row.setTrueLengthM(taught.fitted().metres());
    row.setKnownBy(taught.knownBy().word());
    row.setBaselineGapUm(taught.gap());
    row.setBaselineVolts(taught.before());
    row.setBaselineSensitivity(taught.sensitivityBefore());
    row.setVolts(taught.volts());
    row.setSensitivity(taught.sensitivity());
    row.setWords(taught.words());
    tx.insert(row);
  }

  void withdraw(Tx tx, long evidence, String words) {
    LawEvidenceWithdrawnRecord row = tx.row(LAW_EVIDENCE_WITHDRAWN);
    row.setEvidenceId(evidence);
    row.setWords(words);
    tx.insert(row);
  }

  /** Of a family, oldest first. */
  List<Kept> ofFamily(DSLContext sql, long family) {
    return sql.select(LAW_EVIDENCE.asterisk(), CHANGE.ACTOR_NAME, LAW_EVIDENCE_WITHDRAWN.WORDS)
        .from(LAW_EVIDENCE)
        .join(CHANGE)
        .on(CHANGE.ID.eq(LAW_EVIDENCE.CHANGE_ID))
        .leftJoin(LAW_EVIDENCE_WITHDRAWN)
        .on(LAW_EVIDENCE_WITHDRAWN.EVIDENCE_ID.eq(LAW_EVIDENCE.ID))
        .where(LAW_EVIDENCE.FAMILY_ID.eq(family))
        .orderBy(LAW_EVIDENCE.ID)
        .fetch(LawStore::kept);
  }

  /** What counts, by the code of its family. */
  Map<String, List<Taught>> counting(DSLContext sql) {
    return sql.select(LAW_EVIDENCE.asterisk(), FAMILY.CODE)
        .from(LAW_EVIDENCE)
        .join(FAMILY)
        .on(FAMILY.ID.eq(LAW_EVIDENCE.FAMILY_ID))
        .where(
            notExists(
                selectOne()
                    .from(LAW_EVIDENCE_WITHDRAWN)
                    .where(LAW_EVIDENCE_WITHDRAWN.EVIDENCE_ID.eq(LAW_EVIDENCE.ID))))
        .orderBy(LAW_EVIDENCE.ID)
        .fetchGroups(row -> row.get(FAMILY.CODE), LawStore::taught);
  }

  private static Kept kept(Record row) {
    String withdrawn = row.get(LAW_EVIDENCE_WITHDRAWN.WORDS);
    return new Kept(
        row.get(LAW_EVIDENCE.ID),
        taught(row),
        row.get(CHANGE.ACTOR_NAME),
        withdrawn == null ? "" : withdrawn);
  }

  private static Taught taught(Record row) {
    return new Taught(
        row.get(LAW_EVIDENCE.FOUND_ON),
        row.get(LAW_EVIDENCE.LOOP_TAG),
        new Length(row.get(LAW_EVIDENCE.SYSTEM_LENGTH_M)),
        new Length(row.get(LAW_EVIDENCE.TRUE_LENGTH_M)),
        Evidence.named(row.get(LAW_EVIDENCE.KNOWN_BY)).orElseThrow(),
        row.get(LAW_EVIDENCE.BASELINE_GAP_UM),
        row.get(LAW_EVIDENCE.BASELINE_VOLTS),
        row.get(LAW_EVIDENCE.BASELINE_SENSITIVITY),
        row.get(LAW_EVIDENCE.VOLTS),
        row.get(LAW_EVIDENCE.SENSITIVITY),
        row.get(LAW_EVIDENCE.WORDS));
  }
}
