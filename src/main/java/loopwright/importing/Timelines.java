package loopwright.importing;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import loopwright.loop.Content;
import loopwright.loop.Slot;

/**
 * Who sat where and when: recorded beliefs with the rows of the files put over them, slot by slot
 * and part by part.
 */
final class Timelines {
  private record InSlot(long point, Slot slot) {}

  private final Map<InSlot, TreeMap<Instant, Stay>> slots = new HashMap<>();
  private final Map<Content.Part, TreeMap<Instant, Stay>> parts = new HashMap<>();

  void put(Stay stay) {
    slot(stay.point(), stay.slot()).put(stay.span().from(), stay);
    if (stay.content() instanceof Content.Part part) {
      part(part).put(stay.span().from(), stay);
    }
  }

  void remove(Stay stay) {
    slot(stay.point(), stay.slot()).remove(stay.span().from());
    if (stay.content() instanceof Content.Part part) {
      part(part).remove(stay.span().from());
    }
  }

  private TreeMap<Instant, Stay> slot(long point, Slot slot) {
    return slots.computeIfAbsent(new InSlot(point, slot), s -> new TreeMap<>());
  }

  private TreeMap<Instant, Stay> part(Content.Part part) {
    return parts.computeIfAbsent(part, p -> new TreeMap<>());
  }

  /** Stays in the slot that share a moment with that range, earliest first. */
  List<Stay> inSlot(Stay range) {
    return overlapping(slot(range.point(), range.slot()), range);
  }

  /** Stays of the part that share a moment with that range, earliest first. */
  List<Stay> ofPart(Stay range) {
    return range.content() instanceof Content.Part part
        ? overlapping(part(part), range)
        : List.of();
  }

  private static List<Stay> overlapping(TreeMap<Instant, Stay> line, Stay range) {
    List<Stay> found = new ArrayList<>();
    Optional.ofNullable(line.lowerEntry(range.span().from()))
        .map(Map.Entry::getValue)
        .filter(stay -> stay.span().overlaps(range.span()))
        .ifPresent(found::add);
    found.addAll(line.subMap(range.span().from(), true, range.span().until(), false).values());
    return found;
  }

  /** The stay that covers that moment. */
  Optional<Stay> at(long point, Slot slot, Instant moment) {
    return Optional.ofNullable(slot(point, slot).floorEntry(moment))
        .map(Map.Entry::getValue)
        .filter(stay -> stay.span().contains(moment));
  }

  /** When the next stay in the slot begins. */
  Optional<Instant> next(long point, Slot slot, Instant moment) {
    return Optional.ofNullable(slot(point, slot).higherKey(moment));
  }

  Collection<Stay> all() {
    return slots.values().stream().flatMap(line -> line.values().stream()).toList();
  }
}
