package loopwright.db;

import java.util.Set;
import org.jooq.DSLContext;

/** Works out rows of a derived table again from the facts that a change leaves. */
@FunctionalInterface
public interface Derivation {
  void workOut(DSLContext sql, Set<Long> which);
}
