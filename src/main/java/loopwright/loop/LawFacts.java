package loopwright.loop;

import loopwright.matching.LearntLaws;
import org.jooq.DSLContext;

/** What length laws were learnt; given by the feature that keeps confirmed lengths. */
@FunctionalInterface
public interface LawFacts {

  /** For programs and tests without confirmed lengths. */
  LawFacts NONE = sql -> LearntLaws.NONE;

  /** The laws of all families as they are now, read once for many loops. */
  LearntLaws learnt(DSLContext sql);
}
