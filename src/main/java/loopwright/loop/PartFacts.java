package loopwright.loop;

import java.util.Collection;
import java.util.Map;
import loopwright.db.Tx;
import loopwright.matching.Families;
import loopwright.matching.PartView;
import org.jooq.DSLContext;

/** What the register knows of parts and families, as the rules see it. */
public interface PartFacts {

  /** Every known family and interchangeable pair. */
  Families families(DSLContext sql);

  /**
   * The parts with these numbers as believed now.
   *
   * @return by number; one that doesn't exist is not in it
   */
  Map<Long, PartView> parts(DSLContext sql, Collection<Long> numbers);

  /** Told whenever parts came or went, so that their state follows. */
  void placementsChanged(Tx tx, Collection<Long> numbers);
}
