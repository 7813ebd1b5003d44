package loopwright.loop;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import loopwright.db.Tx;
import loopwright.matching.Allowance;
import loopwright.time.Viewpoint;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/** Which concessions stand for loops; given by the feature that keeps them. */
public interface Allowances {

  /** For programs and tests without concessions. */
  Allowances NONE = (sql, loops, viewpoint) -> Map.of();

  /**
   * The concessions that stand at that moment, as known then, for loops that are exactly these
   * combinations.
   *
   * @return by point; a loop without any is not in it
   */
  Map<Long, Allowed> standing(
      DSLContext sql, Collection<AsLeftFacts.Fitted> loops, Viewpoint viewpoint);

  /** The loop is no longer the combination it was: what was bound to that ends. */
  default void exchanged(Tx tx, long point, String before) {}

  /**
   * What stands for one loop.
   *
   * @param soonEnds whether somebody must see to it before it ends
   * @param reviewAt when the answer becomes another one without anybody's doing; null if never
   */
  record Allowed(List<Allowance> allowances, boolean soonEnds, @Nullable Instant reviewAt) {}
}
