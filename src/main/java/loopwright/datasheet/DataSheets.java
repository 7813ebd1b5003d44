package loopwright.datasheet;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.db.DbProblem;
import loopwright.db.Tx;
import loopwright.matching.PartKind;
import loopwright.matching.PartSheet;
import loopwright.problem.Refused;
import loopwright.register.FamilyId;
import loopwright.register.PartIdentity;
import loopwright.register.SheetFacts;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/**
 * Data sheets: one for a kind of part of a family, one for a model. What the model's sheet says
 * goes before what its family's says, field by field.
 */
public final class DataSheets implements SheetFacts {
  private final SheetStore store = new SheetStore();
  private final SheetWatch watch;

  /**
   * @param watch told in the same change of each new version
   */
  public DataSheets(SheetWatch watch) {
    this.watch = watch;
  }

  /** Told in the same change when a data sheet says something else. */
  @FunctionalInterface
  public interface SheetWatch {
    /** Nobody wants to know. */
    SheetWatch NOBODY = (tx, subject) -> {};

    void sheetChanged(Tx tx, Subject subject);
  }

  /** The newest version of each, families' first. */
  public List<DataSheet> all(DSLContext sql) {
    return store.newest(sql);
  }

  /** Every version, the newest first; empty where nobody entered any. */
  public List<DataSheet> versions(DSLContext sql, Subject subject) {
    return store.versions(sql, subject);
  }

  /**
   * Enters a new version.
   *
   * @param seen the version that the changer saw; 0 if there was none
   * @throws Refused {@link DbProblem#STALE} if another one came meanwhile, {@link
   *     SheetProblem#NOTHING_NEW} if it says the same
   */
  public void record(Tx tx, Subject subject, int seen, SheetDetails details) {
    Optional<DataSheet> newest = store.versions(tx.sql(), subject).stream().findFirst();
    if (newest.map(DataSheet::version).orElse(0) != seen) {
      throw new Refused(DbProblem.STALE);
    }
    if (newest.map(DataSheet::details).orElse(SheetDetails.NOTHING_SAID).equals(details)) {
      throw new Refused(SheetProblem.NOTHING_NEW);
    }
    store.insert(tx, subject, seen + 1, details);
    watch.sheetChanged(tx, subject);
  }

  @Override
  public Lookup read(DSLContext sql) {
    Map<String, PartSheet> byKey = new HashMap<>();
    store.newest(sql).forEach(one -> byKey.put(one.subject().key(), one.details().sheet()));
    return (kind, identity, family) -> of(byKey, kind, identity, family);
  }

  private static PartSheet of(
      Map<String, PartSheet> byKey,
      PartKind kind,
      PartIdentity identity,
      @Nullable FamilyId family) {
    if (byKey.isEmpty()) {
      return PartSheet.NOT_GIVEN;
    }
    PartSheet own = byKey.get(Subject.ofModel(kind, identity).key());
    PartSheet shared = family == null ? null : byKey.get(Subject.ofFamily(kind, family).key());
    if (own == null) {
      return shared == null ? PartSheet.NOT_GIVEN : shared;
    }
    return shared == null ? own : own.filledBy(shared);
  }
}
