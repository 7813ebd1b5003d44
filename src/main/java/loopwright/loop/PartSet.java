package loopwright.loop;

import java.time.Instant;
import java.util.Arrays;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import loopwright.time.Span;

/**
 * Parts put together as a chain, wherever they are: on a bench, in a kit, or at a point with one
 * standing in for another. Every slot that is named holds a part; others hold nothing.
 *
 * @param parts by slot, in chain order; with a probe and a driver
 */
public record PartSet(Map<Slot, Content.Part> parts) {
  private static final int LONGEST = 200;
  private static final Pattern MEMBER =
      Pattern.compile("([a-z0-9-]{1,10}):([1-9]\\d{0,17})(?:#([1-9]\\d?))?");

  public PartSet {
    parts = Map.copyOf(parts);
    if (!parts.containsKey(Slot.PROBE) || !parts.containsKey(Slot.DRIVER)) {
      throw new IllegalArgumentException("A set needs a probe and a driver.");
    }
  }

  /** What is fitted, if every slot is known; see {@link Combinations#fingerprint}. */
  public static Optional<PartSet> of(List<Placed> chain) {
    return Combinations.fingerprint(chain).flatMap(PartSet::read);
  }

  /** The same of a chain that is meant. */
  public static Optional<PartSet> of(Chain chain) {
    Map<Slot, Content.Part> parts = new EnumMap<>(Slot.class);
    for (Map.Entry<Slot, Content> entry : chain.slots().entrySet()) {
      if (entry.getValue() instanceof Content.Unknown) {
        return Optional.empty();
      }
      if (entry.getValue() instanceof Content.Part part) {
        parts.put(entry.getKey(), part);
      }
    }
    return isWhole(parts) ? Optional.of(new PartSet(parts)) : Optional.empty();
  }

  /** Reads a fingerprint; empty if it is none, names a part twice, or lacks probe or driver. */
  public static Optional<PartSet> read(String fingerprint) {
    Map<Slot, Content.Part> parts = new EnumMap<>(Slot.class);
    if (fingerprint.length() > LONGEST) {
      return Optional.empty();
    }
    for (String word : fingerprint.split("/", -1)) {
      Matcher member = MEMBER.matcher(word);
      Optional<Slot> slot = member.matches() ? Slot.named(member.group(1)) : Optional.empty();
      if (slot.isEmpty() || parts.containsKey(slot.get())) {
        return Optional.empty();
      }
      Content.Part part =
          new Content.Part(
              Long.parseLong(member.group(2)),
              member.group(3) == null ? 1 : Integer.parseInt(member.group(3)));
      if (parts.values().stream().anyMatch(other -> other.number() == part.number())) {
        return Optional.empty();
      }
      parts.put(slot.get(), part);
    }
    return isWhole(parts) ? Optional.of(new PartSet(parts)) : Optional.empty();
  }

  private static boolean isWhole(Map<Slot, Content.Part> parts) {
    return parts.containsKey(Slot.PROBE) && parts.containsKey(Slot.DRIVER);
  }

  /** The slots that hold a part, in chain order. */
  public List<Slot> slots() {
    return parts.keySet().stream().sorted().toList();
  }

  /** The register's numbers of the parts, in chain order. */
  public List<Long> components() {
    return slots().stream().map(slot -> part(slot).number()).toList();
  }

  public Content.Part part(Slot slot) {
    return Objects.requireNonNull(parts.get(slot));
  }

  /** The same with another part in a slot, channel one. */
  public PartSet with(Slot slot, long component) {
    Map<Slot, Content.Part> other = new EnumMap<>(parts);
    other.put(slot, new Content.Part(component));
    return new PartSet(other);
  }

  /** As combinations are named. */
  public String fingerprint() {
    return slots().stream()
        .map(slot -> slot.word() + ":" + Combinations.name(part(slot)))
        .collect(Collectors.joining("/"));
  }

  /** As if fitted at no point. */
  public List<Placed> chain() {
    return slots().stream()
        .map(slot -> Placed.fresh(0, slot, part(slot), Span.from(Instant.EPOCH), "set"))
        .toList();
  }

  /** As somebody would leave it in a loop. */
  public Chain asChain() {
    return new Chain(Map.copyOf(parts));
  }

  /** The slots in which another chain holds another part or none, or one that this lacks. */
  public List<Slot> differingFrom(PartSet other) {
    return Arrays.stream(Slot.values())
        .filter(slot -> !Objects.equals(parts.get(slot), other.parts.get(slot)))
        .toList();
  }

  /** Whether it holds one of these parts. */
  public boolean holdsAny(Collection<Long> components) {
    return parts.values().stream().anyMatch(part -> components.contains(part.number()));
  }
}
