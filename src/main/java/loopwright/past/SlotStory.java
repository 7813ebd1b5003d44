package loopwright.past;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import loopwright.loop.Content;
import loopwright.loop.PlacementHistory.Belief;
import loopwright.loop.PlacementHistory.Entered;
import org.jspecify.annotations.Nullable;

/**
 * Every belief ever held about one slot, and what it says of two moments.
 *
 * @param beliefs about one slot of one point; at least one
 */
record SlotStory(List<Belief> beliefs) {

  /**
   * A moment, as known when the record ended with an entry.
   *
   * @param entry {@link Long#MAX_VALUE} for all that is known now
   */
  record View(Instant at, long entry) {}

  /** What differs from the first to the second view; the first is not the later one. */
  Optional<Difference> between(View first, View second) {
    @Nullable Belief before = at(first);
    @Nullable Belief retold = at(new View(first.at(), second.entry()));
    @Nullable Belief after = at(second);
    List<Difference.Step> steps = new ArrayList<>();
    if (!Objects.equals(content(before), content(retold))) {
      steps.add(new Difference.Step(null, content(retold), retelling(before, retold)));
    }
    steps.addAll(meanwhile(first.at(), second));
    if (steps.isEmpty()) {
      return Optional.empty();
    }
    Belief any = beliefs.get(0);
    return Optional.of(
        new Difference(
            any.placed().point(), any.placed().slot(), content(before), content(after), steps));
  }

  private @Nullable Belief at(View view) {
    return held(view.entry()).stream()
        .filter(belief -> belief.span().contains(view.at()))
        .findFirst()
        .orElse(null);
  }

  private List<Belief> held(long entry) {
    return beliefs.stream()
        .filter(belief -> belief.isHeldAt(entry))
        .sorted(Comparator.comparing(belief -> belief.span().from()))
        .toList();
  }

  private static @Nullable Content content(@Nullable Belief belief) {
    return belief == null ? null : belief.placed().content();
  }

  /** The change through which the record of one moment became another one. */
  private Entered retelling(@Nullable Belief before, @Nullable Belief retold) {
    if (retold != null) {
      return origin(retold);
    }
    Belief gone = Objects.requireNonNull(before);
    Entered ended = gone.ended();
    return ended == null ? gone.made() : ended;
  }

  /** Stays that begin after the one moment and up to the other, and gaps between them. */
  private List<Difference.Step> meanwhile(Instant after, View second) {
    List<Difference.Step> steps = new ArrayList<>();
    @Nullable Belief last = null;
    for (Belief belief : held(second.entry())) {
      Instant from = belief.span().from();
      boolean gap = last != null && last.span().until().isBefore(from);
      if (last != null && gap) {
        ends(last, after, second.at()).ifPresent(steps::add);
      }
      boolean same = last != null && !gap && Objects.equals(content(last), content(belief));
      if (!same && from.isAfter(after) && !from.isAfter(second.at())) {
        steps.add(new Difference.Step(from, content(belief), origin(belief)));
      }
      last = belief;
    }
    if (last != null) {
      ends(last, after, second.at()).ifPresent(steps::add);
    }
    return steps;
  }

  private Optional<Difference.Step> ends(Belief belief, Instant after, Instant upTo) {
    Instant until = belief.span().until();
    return until.isAfter(after) && !until.isAfter(upTo)
        ? Optional.of(new Difference.Step(until, null, belief.made()))
        : Optional.empty();
  }

  /**
   * The change that first said that from that moment on it was so. A later change that only gave
   * the stay another end entered a new belief, but is not the one to ask.
   */
  private Entered origin(Belief belief) {
    Belief first = belief;
    Optional<Belief> earlier = replacedBy(first);
    while (earlier.isPresent()) {
      first = earlier.get();
      earlier = replacedBy(first);
    }
    return first.made();
  }

  private static boolean isEndedBy(Belief belief, long change) {
    Entered ended = belief.ended();
    return ended != null && ended.change() == change;
  }

  private Optional<Belief> replacedBy(Belief later) {
    return beliefs.stream()
        .filter(belief -> isEndedBy(belief, later.made().change()))
        .filter(belief -> belief.made().change() != later.made().change())
        .filter(belief -> belief.span().from().equals(later.span().from()))
        .filter(belief -> belief.placed().content().equals(later.placed().content()))
        .findFirst();
  }
}
