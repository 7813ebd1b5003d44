package loopwright.whatif;

import loopwright.cause.LengthLaw;
import org.jooq.DSLContext;

/** The length law of a family as far as evidence has narrowed it. */
public interface LawOfFamily {
  /** Nothing is proved of any family. */
  LawOfFamily UNPROVED =
      new LawOfFamily() {
        @Override
        public LengthLaw law(DSLContext sql, String family) {
          return LengthLaw.unproved();
        }

        @Override
        public String words(DSLContext sql, String family) {
          return "The length law is common practice and simulation, no source.";
        }
      };

  /**
   * @param family its code; empty where none is known
   */
  LengthLaw law(DSLContext sql, String family);

  /** On what it rests, a sentence. */
  String words(DSLContext sql, String family);
}
