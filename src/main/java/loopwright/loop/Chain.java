package loopwright.loop;

import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loopwright.problem.Refused;

/**
 * The whole chain of a loop as somebody found it or means to leave it: every slot says what sits in
 * it. Path slots that nobody mentions hold nothing.
 */
public record Chain(Map<Slot, Content> slots) {

  /** Refuses a part that stands twice; probe and driver that nobody mentions are unknown. */
  public Chain {
    Map<Slot, Content> full = new EnumMap<>(Slot.class);
    full.putAll(slots);
    full.putIfAbsent(Slot.PROBE, new Content.Unknown());
    full.putIfAbsent(Slot.DRIVER, new Content.Unknown());
    full.putIfAbsent(Slot.PATH_1, new Content.None());
    slots = full;
    refuseTwice(full);
  }

  public static Chain of(Content probe, List<Content> path, Content driver) {
    Map<Slot, Content> slots = new EnumMap<>(Slot.class);
    slots.put(Slot.PROBE, probe);
    for (int i = 0; i < path.size(); i++) {
      slots.put(Slot.values()[Slot.PATH_1.ordinal() + i], path.get(i));
    }
    slots.put(Slot.DRIVER, driver);
    return new Chain(slots);
  }

  public Content in(Slot slot) {
    return slots.getOrDefault(slot, new Content.None());
  }

  private static void refuseTwice(Map<Slot, Content> slots) {
    Set<Content> parts = new HashSet<>();
    slots.forEach(
        (slot, content) -> {
          if (content instanceof Content.Part && !parts.add(content)) {
            throw new Refused(LoopProblem.PART_TWICE, slot.word());
          }
        });
  }
}
