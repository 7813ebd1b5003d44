package loopwright.register;

import java.util.Set;
import loopwright.matching.PartKind;
import org.jooq.DSLContext;

/** Which loops a change of a family or of a data sheet concerns. */
public final class FittedParts {
  private final FittedStore store = new FittedStore();

  /** Points at which a part of the family is fitted now. */
  public Set<Long> pointsOfFamily(DSLContext sql, FamilyId family) {
    return store.pointsOf(sql, FittedStore.ofFamily(null, family));
  }

  /** The same for one kind of its parts. */
  public Set<Long> pointsOfFamily(DSLContext sql, PartKind kind, FamilyId family) {
    return store.pointsOf(sql, FittedStore.ofFamily(kind, family));
  }

  /** Points at which a part of that kind, maker and model, in any case, is fitted now. */
  public Set<Long> pointsOfModel(DSLContext sql, PartKind kind, String maker, String model) {
    return store.pointsOf(sql, FittedStore.ofModel(kind, maker, model));
  }

  /** Numbers of the family's parts of that kind, fitted or not. */
  public Set<Long> partsOfFamily(DSLContext sql, PartKind kind, FamilyId family) {
    return store.partsOf(sql, FittedStore.ofFamily(kind, family));
  }

  /** Numbers of the parts of that kind, maker and model, fitted or not. */
  public Set<Long> partsOfModel(DSLContext sql, PartKind kind, String maker, String model) {
    return store.partsOf(sql, FittedStore.ofModel(kind, maker, model));
  }
}
