package loopwright.loop;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * What became of parts after curves were taken with them.
 *
 * @param lengthChanges the moments since which a part has another effective length or setting
 * @param stays where parts of curves taken elsewhere are believed to have been
 */
record PartsSince(Map<Long, List<Instant>> lengthChanges, Map<Long, List<Placed>> stays) {
  static final PartsSince NOTHING = new PartsSince(Map.of(), Map.of());

  boolean lengthChanged(long part, Instant taken) {
    return lengthChanges.getOrDefault(part, List.of()).stream().anyMatch(at -> at.isAfter(taken));
  }

  /** Whether it was fitted, wherever, after the curve and before its present stay. */
  boolean wasFittedBetween(long part, Instant taken, Placed present) {
    return stays.getOrDefault(part, List.of()).stream()
        .map(Placed::span)
        .anyMatch(
            stay -> stay.from().isAfter(taken) && stay.from().isBefore(present.span().from()));
  }

  static PartsSince of(Map<Long, List<Instant>> lengthChanges, Collection<Placed> stays) {
    return new PartsSince(
        lengthChanges,
        stays.stream()
            .filter(placed -> placed.content() instanceof Content.Part)
            .collect(Collectors.groupingBy(placed -> placed.content().component().orElseThrow())));
  }
}
