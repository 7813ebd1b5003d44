package loopwright.loop;

import java.util.Collection;
import java.util.Map;
import java.util.TreeMap;
import loopwright.matching.PartView;
import org.jooq.DSLContext;

/** What parts are reserved for; given by the feature that keeps reservations. */
@FunctionalInterface
public interface Promises {
  /** Where nobody keeps any. */
  Promises NONE = (sql, components) -> Map.of();

  /** By component; what isn't reserved is not in it. */
  Map<Long, Promise> of(DSLContext sql, Collection<Long> components);

  /**
   * What a part is reserved for.
   *
   * @param point whose loop it is put aside for
   * @param words for sentences: {@code O-12, loop K301-VX1}
   */
  record Promise(long point, String words) {}

  /** Parts as one loop sees them: a promise to that very loop is none to it. */
  static Map<Long, PartView> seenFrom(
      long point, Map<Long, PartView> views, Map<Long, Promise> promised) {
    if (promised.isEmpty()) {
      return views;
    }
    Map<Long, PartView> seen = new TreeMap<>(views);
    promised.forEach(
        (component, promise) -> {
          if (promise.point() != point) {
            seen.computeIfPresent(component, (same, view) -> view.promised(promise.words()));
          }
        });
    return seen;
  }
}
