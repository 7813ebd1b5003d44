package loopwright.family;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import loopwright.db.Tx;
import loopwright.register.Family;
import loopwright.register.FamilyBook;
import loopwright.register.FamilyId;
import loopwright.register.FamilyPair;
import org.jooq.DSLContext;

/** Every version of every family. A version is added by each change, whoever makes it. */
public final class FamilyVersions {
  private final FamilyVersionStore store = new FamilyVersionStore();
  private final FamilyBook families = new FamilyBook();

  /** The newest first. */
  public List<FamilyVersion> of(DSLContext sql, FamilyId family) {
    return store.of(sql, family);
  }

  /** Keeps what the family says now, unless that is what it said before. */
  public void add(Tx tx, FamilyId id) {
    DSLContext sql = tx.sql();
    Family family = families.family(sql, id).orElseThrow();
    String content =
        FamilyContent.written(FamilyContent.of(family.details(), partners(sql, family)));
    FamilyVersionStore.Last last = store.last(sql, id);
    if (!content.equals(last.content())) {
      store.insert(tx, id, last.number() + 1, content);
    }
  }

  private Map<String, String> partners(DSLContext sql, Family family) {
    Map<Long, String> codes = families.codes(sql);
    Map<String, String> partners = new TreeMap<>();
    for (FamilyPair pair : families.pairs(sql)) {
      if (pair.first().equals(family.id()) || pair.second().equals(family.id())) {
        FamilyId other = pair.first().equals(family.id()) ? pair.second() : pair.first();
        partners.put(codes.getOrDefault(other.number(), ""), pair.saidBy());
      }
    }
    return partners;
  }
}
