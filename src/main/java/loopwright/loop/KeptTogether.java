package loopwright.loop;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import loopwright.matching.PartView;
import org.jooq.DSLContext;

/** Which parts are kept together; given by the feature that keeps kits. */
@FunctionalInterface
public interface KeptTogether {
  /** Where nobody keeps any. */
  KeptTogether NONE = (sql, components) -> Map.of();

  /** By component; what belongs to no kit is not in it. */
  Map<Long, Kit> of(DSLContext sql, Collection<Long> components);

  /**
   * A kit.
   *
   * @param words for sentences
   * @param parts its parts in words, by component
   */
  record Kit(String words, Map<Long, String> parts) {
    public Kit {
      parts = Map.copyOf(parts);
    }

    private String without(long component) {
      return parts.entrySet().stream()
          .filter(entry -> entry.getKey() != component)
          .sorted(Map.Entry.comparingByKey())
          .map(Map.Entry::getValue)
          .collect(Collectors.joining(" and "));
    }
  }

  /** Parts as one loop sees them: one that is here with its whole kit needs no word. */
  static Map<Long, PartView> seenFrom(
      List<Placed> chain, Map<Long, PartView> views, Map<Long, Kit> kits) {
    if (kits.isEmpty()) {
      return views;
    }
    List<Long> here =
        chain.stream().flatMap(placed -> placed.content().component().stream().boxed()).toList();
    Map<Long, PartView> seen = new TreeMap<>(views);
    for (long component : here) {
      Kit kit = kits.get(component);
      if (kit != null && !here.containsAll(kit.parts().keySet())) {
        seen.computeIfPresent(
            component,
            (same, view) -> view.keptWith(kit.words() + " with " + kit.without(component)));
      }
    }
    return seen;
  }
}
