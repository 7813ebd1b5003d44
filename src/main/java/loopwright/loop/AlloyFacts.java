package loopwright.loop;

import loopwright.matching.Alloys;
import org.jooq.DSLContext;

/** Groups of target alloys; given by the feature that keeps them. */
@FunctionalInterface
public interface AlloyFacts {
  /** Nobody keeps any. */
  AlloyFacts NONE = sql -> Alloys.NOT_GIVEN;

  Alloys groups(DSLContext sql);
}
