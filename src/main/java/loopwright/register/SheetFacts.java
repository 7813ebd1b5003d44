package loopwright.register;

import loopwright.matching.PartKind;
import loopwright.matching.PartSheet;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** What data sheets say of parts; given by the feature that keeps them. */
@FunctionalInterface
public interface SheetFacts {
  /** There is none. */
  SheetFacts NONE = sql -> (kind, identity, family) -> PartSheet.NOT_GIVEN;

  /** Read once for many parts. */
  Lookup read(DSLContext sql);

  /** Says what holds for one part. */
  @FunctionalInterface
  interface Lookup {
    PartSheet of(PartKind kind, PartIdentity identity, @Nullable FamilyId family);
  }
}
