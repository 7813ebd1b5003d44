package loopwright.loop;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Names exact combinations of parts. */
public final class Combinations {
  private Combinations() {}

  /**
   * The chain's parts in order, for instance {@code probe:12/path-1:7/driver:31}; empty while a
   * slot is unknown or probe or driver is missing, because then nobody can say what a curve belongs
   * to.
   */
  public static Optional<String> fingerprint(List<Placed> chain) {
    boolean unknown = chain.stream().anyMatch(p -> p.content() instanceof Content.Unknown);
    if (unknown || !holdsPart(chain, Slot.PROBE) || !holdsPart(chain, Slot.DRIVER)) {
      return Optional.empty();
    }
    return Optional.of(
        chain.stream()
            .filter(placed -> placed.content() instanceof Content.Part)
            .map(placed -> placed.slot().word() + ":" + name((Content.Part) placed.content()))
            .collect(Collectors.joining("/")));
  }

  /** A part of a combination. */
  public record Member(String slot, long component) {}

  /** The parts that a fingerprint names, in chain order. */
  public static List<Member> members(String fingerprint) {
    return components(fingerprint).entrySet().stream()
        .map(entry -> new Member(entry.getKey().word(), entry.getValue()))
        .toList();
  }

  /** The components that a fingerprint names, by slot, in chain order. */
  static Map<Slot, Long> components(String fingerprint) {
    Map<Slot, Long> components = new EnumMap<>(Slot.class);
    for (String part : fingerprint.split("/")) {
      String[] halves = part.split("[:#]");
      components.put(Slot.ofWord(halves[0]), Long.valueOf(halves[1]));
    }
    return components;
  }

  static String name(Content.Part part) {
    return part.channel() == 1
        ? Long.toString(part.number())
        : part.number() + "#" + part.channel();
  }

  private static boolean holdsPart(List<Placed> chain, Slot slot) {
    return chain.stream()
        .anyMatch(placed -> placed.slot() == slot && placed.content() instanceof Content.Part);
  }
}
