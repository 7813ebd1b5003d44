package loopwright.exchange;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import loopwright.matching.PartKind;
import loopwright.units.Length;

/** Finds exchanges for each kind and family, and chooses among kinds. */
final class Exchanges {
  /** Least weight for each loop put right; then as many as possible. */
  private static final Comparator<Exchange> LIGHTEST =
      Comparator.<Exchange>comparingDouble(e -> (double) e.weight() / e.putsRight())
          .thenComparing(Comparator.comparing(Exchange::putsRight).reversed())
          .thenComparing(e -> e.loops().toString());

  private static final List<PartKind> KINDS =
      List.of(PartKind.DRIVER, PartKind.TRANSMITTER, PartKind.CABLE, PartKind.PROBE);

  private final Weights weights;
  private final Map<String, LoopLengths> loops = new LinkedHashMap<>();
  private final Set<String> done = new HashSet<>();
  private final List<Exchange> chosen = new ArrayList<>();
  private final List<Exchange> notChosen = new ArrayList<>();

  private Exchanges(List<LoopLengths> all, Weights weights) {
    this.weights = weights;
    all.forEach(loop -> loops.put(loop.tag(), loop));
    boolean more = round(notChosen);
    while (more) {
      more = round(new ArrayList<>());
    }
  }

  static Exchanges of(List<LoopLengths> loops, Weights weights) {
    return new Exchanges(loops, weights);
  }

  /**
   * Chooses exchanges that don't share a loop. A loop that is still out then may take part in the
   * next round, with parts of another kind.
   *
   * @param others takes those that share one
   * @return false when there was none to choose
   */
  private boolean round(List<Exchange> others) {
    List<Exchange> found = new ArrayList<>();
    for (PartKind kind : KINDS) {
      found.addAll(ofKind(kind));
    }
    found.sort(LIGHTEST);
    Set<String> touched = new HashSet<>();
    for (Exchange exchange : found) {
      if (Collections.disjoint(touched, exchange.loops())) {
        touched.addAll(exchange.loops());
        choose(exchange);
      } else {
        others.add(exchange);
      }
    }
    return !found.isEmpty();
  }

  private void choose(Exchange exchange) {
    chosen.add(exchange);
    for (Exchange.Move move : exchange.moves()) {
      loops.computeIfPresent(move.to(), (tag, loop) -> loop.with(move.takesPlaceOf(), move.part()));
      if (move.inBalance()) {
        done.add(move.to());
      }
    }
  }

  private List<Exchange> ofKind(PartKind kind) {
    List<Exchange> found = new ArrayList<>();
    for (List<Seat> seats : pools(kind)) {
      found.addAll(best(seats, weights));
    }
    return found;
  }

  /** The optimal dealing of one pool of seats, as exchanges. */
  static List<Exchange> best(List<Seat> seats, Weights weights) {
    if (seats.size() < 2) {
      return List.of();
    }
    FittedPart first = seats.get(0).part();
    List<Length> dealt = LengthFlow.deal(seats, weights.of(first.kind()), weights.otherTrain());
    return Pairing.rings(seats, dealt).stream()
        .map(ring -> Exchange.of(ring, String.valueOf(first.family()), weights))
        .toList();
  }

  /** Seats by site and family; only where somebody is out of balance. */
  private Collection<List<Seat>> pools(PartKind kind) {
    Map<String, List<Seat>> pools = new TreeMap<>();
    for (LoopLengths loop : loops.values()) {
      if (!done.contains(loop.tag())) {
        loop.only(kind)
            .filter(part -> part.free() && part.length() != null && part.family() != null)
            .ifPresent(
                part ->
                    pools
                        .computeIfAbsent(pool(loop, part), key -> new ArrayList<>())
                        .add(new Seat(loop, part)));
      }
    }
    pools.values().removeIf(seats -> seats.stream().allMatch(seat -> seat.loop().isInBalance()));
    return pools.values();
  }

  private static String pool(LoopLengths loop, FittedPart part) {
    return loop.site() + "\n" + String.valueOf(part.family()).toLowerCase(Locale.ROOT);
  }

  /** Exchanges that stand alone. */
  List<Proposal.Way> ways() {
    return groups().stream()
        .filter(group -> group.size() == 1)
        .map(group -> new Proposal.Way(group.get(0), like(group.get(0))))
        .toList();
  }

  /** Exchanges that are of use only together, in the order in which to make them. */
  List<Proposal.SeveralKinds> bySeveralKinds() {
    return groups().stream()
        .filter(group -> group.size() > 1)
        .map(Proposal.SeveralKinds::new)
        .toList();
  }

  /** The chosen exchanges, those together that share a loop. */
  private List<List<Exchange>> groups() {
    List<List<Exchange>> groups = new ArrayList<>();
    for (Exchange exchange : chosen) {
      List<Exchange> merged = new ArrayList<>();
      groups.removeIf(group -> sharesLoop(group, exchange) && merged.addAll(group));
      merged.add(exchange);
      groups.add(merged);
    }
    return groups;
  }

  private static boolean sharesLoop(List<Exchange> group, Exchange exchange) {
    return group.stream().anyMatch(e -> !Collections.disjoint(e.loops(), exchange.loops()));
  }

  private List<Exchange> like(Exchange best) {
    return notChosen.stream()
        .filter(other -> other.kind() != best.kind())
        .filter(other -> other.loops().equals(best.loops()))
        .filter(other -> other.putsRight() >= best.putsRight())
        .toList();
  }

  List<Exchange> otherWays() {
    Set<List<String>> told = new HashSet<>();
    chosen.forEach(best -> told.add(best.loops()));
    return notChosen.stream().filter(other -> !told.contains(other.loops())).toList();
  }

  /** Loops that are still out of balance once the chosen exchanges are made. */
  List<LoopLengths> left() {
    return loops.values().stream().filter(loop -> !loop.isInBalance()).toList();
  }
}
