package loopwright.importing;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loopwright.loop.Placed;
import loopwright.register.Component;

/**
 * What is fitted where once the files are taken up; loads what is recorded when it is asked for.
 */
final class Fitted {
  private final Planning planning;
  private final Timelines lines = new Timelines();
  private final Set<Long> loadedPoints = new HashSet<>();
  private final Set<Long> loadedBeliefs = new HashSet<>();

  Fitted(Planning planning) {
    this.planning = planning;
  }

  Timelines lines() {
    return lines;
  }

  /** Loads what is recorded of points and components that aren't merely planned. */
  void load(Collection<Long> points, Collection<Long> components) {
    List<Long> fresh = points.stream().filter(p -> p > 0 && loadedPoints.add(p)).toList();
    List<Long> parts = components.stream().filter(c -> c > 0).toList();
    Set<Long> fitted = new HashSet<>();
    for (Placed placed : planning.features.configuration().ofAll(planning.sql, fresh, parts)) {
      if (loadedBeliefs.add(placed.placement())) {
        lines.put(Stay.of(placed));
        placed.content().component().ifPresent(fitted::add);
      }
    }
    fitted.removeIf(number -> planning.parts.find(number).isPresent());
    Map<Long, Component> found = planning.features.register().components(planning.sql, fitted);
    found.values().forEach(planning.parts::recorded);
  }

  /** A part in words. */
  String words(long number) {
    return planning.parts.find(number).map(Parts.Part::inWords).orElse("a part");
  }
}
