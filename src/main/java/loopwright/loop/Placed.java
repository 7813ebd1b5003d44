package loopwright.loop;

import java.util.Comparator;
import loopwright.time.Span;

/**
 * A belief about a slot: this sat there over that range of moments.
 *
 * @param placement number of the belief; 0 while it is new
 * @param point number of the point
 * @param source how the belief arose: survey, assembly, correction, import, displaced
 */
public record Placed(
    long placement, long point, Slot slot, Content content, Span span, String source) {

  /** Point by point along the chain, in each slot the oldest first. */
  static final Comparator<Placed> IN_CHAIN_ORDER =
      Comparator.comparingLong(Placed::point)
          .thenComparing(Placed::slot)
          .thenComparing(placed -> placed.span().from());

  static Placed fresh(long point, Slot slot, Content content, Span span, String source) {
    return new Placed(0, point, slot, content, span, source);
  }

  Placed during(Span other) {
    return new Placed(0, point, slot, content, other, source);
  }

  boolean isNew() {
    return placement == 0;
  }

  /** Who holds the interval in the part's timeline: the component, else minus the placement. */
  long occupant() {
    return content.component().orElse(-placement);
  }
}
