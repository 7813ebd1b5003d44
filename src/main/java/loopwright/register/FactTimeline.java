package loopwright.register;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import loopwright.time.Span;

/**
 * How beliefs about one part change. What is new holds from a moment on, fact by fact, until the
 * moment at which the same fact was next recorded to change; facts that it doesn't touch stay.
 *
 * @param retired beliefs held so far that are given up
 * @param taken beliefs in their place, oldest first
 */
record FactTimeline(List<Belief> retired, List<Belief> taken) {

  /**
   * @param held all beliefs held, oldest first, without gaps, at least one
   * @param from since when the change holds; may lie before the first belief
   */
  static FactTimeline of(List<Belief> held, Instant from, UnaryOperator<ComponentFacts> change) {
    List<Belief> line = backTo(held, from);
    ComponentFacts before =
        line.stream().filter(b -> b.span().contains(from)).findFirst().orElseThrow().facts();
    ComponentFacts after = change.apply(before);
    List<Belief> retired = new ArrayList<>();
    List<Belief> taken = new ArrayList<>();
    for (Belief belief : line) {
      if (!belief.span().until().isAfter(from)) {
        continue;
      }
      ComponentFacts changed = belief.facts().carrying(before, after);
      after = stillCarried(belief.facts(), before, after);
      if (changed.equals(belief.facts()) && belief.number() != 0) {
        continue;
      }
      if (belief.number() != 0) {
        retired.add(belief);
      }
      take(taken, belief, from, changed);
    }
    return new FactTimeline(retired, joined(taken));
  }

  /** Facts recorded to differ at this belief are not carried beyond it. */
  private static ComponentFacts stillCarried(
      ComponentFacts here, ComponentFacts before, ComponentFacts after) {
    return before.carrying(here, after);
  }

  private static List<Belief> backTo(List<Belief> held, Instant from) {
    List<Belief> line = new ArrayList<>(held);
    Belief first = held.get(0);
    if (from.isBefore(first.span().from())) {
      line.add(0, Belief.fresh(first.facts(), new Span(from, first.span().from())));
    }
    return line;
  }

  private static void take(
      List<Belief> taken, Belief belief, Instant from, ComponentFacts changed) {
    Span span = belief.span();
    if (span.from().isBefore(from)) {
      taken.add(Belief.fresh(belief.facts(), new Span(span.from(), from)));
      span = new Span(from, span.until());
    }
    taken.add(Belief.fresh(changed, span));
  }

  /** Neighbours that say the same become one. */
  private static List<Belief> joined(List<Belief> taken) {
    List<Belief> joined = new ArrayList<>();
    for (Belief belief : taken) {
      int last = joined.size() - 1;
      if (last >= 0
          && joined.get(last).facts().equals(belief.facts())
          && joined.get(last).span().until().equals(belief.span().from())) {
        Span whole = new Span(joined.get(last).span().from(), belief.span().until());
        joined.set(last, Belief.fresh(belief.facts(), whole));
      } else {
        joined.add(belief);
      }
    }
    return joined;
  }

  boolean isEmpty() {
    return taken.isEmpty();
  }
}
