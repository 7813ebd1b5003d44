package loopwright.exchange;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import loopwright.matching.CableUse;
import loopwright.matching.Families;
import loopwright.matching.FamilyView;
import loopwright.matching.PartKind;
import loopwright.units.Length;
import org.jspecify.annotations.Nullable;

/** What a loop that stays out of balance needs: one part, one part less, or several. */
final class Remedies {
  private final Families families;
  private final Weights weights;

  Remedies(Families families, Weights weights) {
    this.families = families;
    this.weights = weights;
  }

  /**
   * One part that would put a loop right.
   *
   * @param insteadOf null where a cable is added
   */
  record Need(
      PartKind kind, String family, Length length, @Nullable FittedPart insteadOf, int weight) {
    String inWords() {
      return switch (kind.place()) {
        case DRIVER_SLOT -> "%s tuned for %s (%s)".formatted(kind.word(), length, length.inFeet());
        case PROBE_SLOT -> "probe with %s (%s) lead".formatted(length, length.inFeet());
        default -> "%s of %s (%s)".formatted(kind.word(), length, length.inFeet());
      };
    }
  }

  int weight(PartKind kind) {
    return weights.of(kind);
  }

  private Optional<FamilyView> family(@Nullable String code) {
    return code == null ? Optional.empty() : families.named(code);
  }

  List<Proposal.LeaveOut> leaveOut(List<LoopLengths> loops) {
    List<Proposal.LeaveOut> found = new ArrayList<>();
    for (LoopLengths loop : loops) {
      loop.parts().stream()
          .filter(part -> part.kind() == PartKind.CABLE && part.length() != null)
          .filter(part -> loop.matches(loop.balanceWith(part, Length.ZERO)))
          .filter(part -> mayDoWithout(loop))
          .findFirst()
          .ifPresent(part -> found.add(new Proposal.LeaveOut(loop.tag(), part, loop.balance())));
    }
    return found;
  }

  private boolean mayDoWithout(LoopLengths loop) {
    boolean several = loop.only(PartKind.CABLE).isEmpty();
    return several
        || family(loop.family()).map(f -> f.cableUse() != CableUse.REQUIRED).orElse(true);
  }

  /** Whether the loop has no cable and could take one. */
  boolean takesCable(LoopLengths loop) {
    return loop.parts().stream().noneMatch(part -> part.kind() == PartKind.CABLE)
        && family(loop.family()).filter(f -> f.cableUse() != CableUse.NONE).isPresent();
  }

  /** Single parts of offered lengths that would do, the least work first. */
  List<Need> needs(LoopLengths loop) {
    List<Need> needs = new ArrayList<>();
    for (FittedPart part : loop.parts()) {
      String family = part.family();
      if (family != null && part.length() != null) {
        offered(part)
            .filter(length -> loop.matches(loop.balanceWith(part, length)))
            .min(Comparator.comparing(length -> loop.balanceWith(part, length).abs()))
            .ifPresent(length -> needs.add(need(part.kind(), family, length, part)));
      }
    }
    if (takesCable(loop)) {
      family(loop.family()).stream()
          .flatMap(family -> family.cableLengths().stream())
          .filter(length -> loop.matches(loop.balance().plus(length)))
          .min(Comparator.comparing(length -> loop.balance().plus(length).abs()))
          .ifPresent(length -> needs.add(need(PartKind.CABLE, loop.family(), length, null)));
    }
    needs.sort(Comparator.comparingInt(Need::weight));
    return needs;
  }

  private Need need(PartKind kind, String family, Length length, @Nullable FittedPart insteadOf) {
    return new Need(kind, family, length, insteadOf, weights.of(kind));
  }

  private Stream<Length> offered(FittedPart part) {
    return family(part.family()).stream().flatMap(f -> f.lengthsOf(part.kind()).stream());
  }

  /** For loops that stock can't make whole: each asks for the part that is least work. */
  List<Proposal.Shortage> shortages(List<LoopLengths> loops) {
    Map<String, List<Proposal.Waiting>> waiting = new TreeMap<>();
    Map<String, Need> needs = new TreeMap<>();
    for (LoopLengths loop : loops) {
      List<Need> ways = needs(loop);
      if (!ways.isEmpty()) {
        Need first = ways.get(0);
        String key = first.family() + "\n" + first.kind() + "\n" + first.length();
        needs.putIfAbsent(key, first);
        waiting
            .computeIfAbsent(key, fresh -> new ArrayList<>())
            .add(
                new Proposal.Waiting(
                    loop.tag(), loop.balance(), ways.stream().skip(1).map(Need::inWords).toList()));
      }
    }
    List<Proposal.Shortage> shortages = new ArrayList<>();
    needs.forEach(
        (key, need) ->
            shortages.add(
                new Proposal.Shortage(
                    need.family(),
                    need.kind(),
                    need.length(),
                    waiting.getOrDefault(key, List.of()))));
    return shortages;
  }

  List<Proposal.SeveralParts> apart(List<LoopLengths> loops) {
    return loops.stream().filter(loop -> needs(loop).isEmpty()).map(this::several).toList();
  }

  private Proposal.SeveralParts several(LoopLengths loop) {
    boolean known = loop.parts().stream().anyMatch(part -> family(part.family()).isPresent());
    List<String> fit = known ? together(loop) : List.of();
    String why =
        !known
            ? "its parts' family, or the lengths it offers, are not known"
            : fit.isEmpty()
                ? "no lengths that its family offers add up"
                : "no single part of an offered length puts it right";
    return new Proposal.SeveralParts(loop.tag(), loop.balance(), fit, why);
  }

  /** The least work of several parts at once, in words. */
  private List<String> together(LoopLengths loop) {
    List<FittedPart> parts =
        loop.parts().stream()
            .filter(part -> part.length() != null && offered(part).findAny().isPresent())
            .toList();
    return Stream.of(new Draft(loop, List.of(), 0))
        .flatMap(draft -> drafts(draft, parts, 0))
        .filter(draft -> draft.fit().size() > 1 && loop.matches(draft.loop().balance()))
        .min(Comparator.comparingInt(Draft::weight))
        .map(Draft::fit)
        .orElse(List.of());
  }

  private record Draft(LoopLengths loop, List<String> fit, int weight) {}

  private Stream<Draft> drafts(Draft draft, List<FittedPart> parts, int at) {
    if (at == parts.size()) {
      return Stream.of(draft);
    }
    FittedPart part = parts.get(at);
    Stream<Draft> changed =
        offered(part)
            .filter(length -> !length.equals(part.length()))
            .map(length -> exchanged(draft, part, length));
    return Stream.concat(Stream.of(draft), changed).flatMap(each -> drafts(each, parts, at + 1));
  }

  private Draft exchanged(Draft draft, FittedPart part, Length length) {
    List<String> fit = new ArrayList<>(draft.fit());
    fit.add(need(part.kind(), String.valueOf(part.family()), length, part).inWords());
    FittedPart fresh = new FittedPart(0, "", part.kind(), part.family(), length, true, true);
    return new Draft(draft.loop().with(part, fresh), fit, draft.weight() + weights.of(part.kind()));
  }
}
