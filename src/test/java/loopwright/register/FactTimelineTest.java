package loopwright.register;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import loopwright.matching.Evidence;
import loopwright.time.Span;
import loopwright.units.Unit;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class FactTimelineTest {
  private static final ComponentFacts NOTHING = ComponentFacts.NOTHING_KNOWN;

  private static Instant day(int day) {
    return Instant.parse("2026-01-01T00:00:00Z").plusSeconds(86_400L * day);
  }

  private static NominalLength metres(String text) {
    return NominalLength.read(text, Unit.METRE, Evidence.READ_ON_PART);
  }

  private static Belief held(long number, int from, int until, ComponentFacts facts) {
    Instant end = until == 0 ? Span.OPEN : day(until);
    return new Belief(number, facts, new Span(day(from), end), null, null);
  }

  private static String told(List<Belief> beliefs) {
    List<String> told = new ArrayList<>();
    for (Belief belief : beliefs) {
      NominalLength length = belief.facts().length();
      told.add(
          belief.span().from().toString().substring(8, 10)
              + "-"
              + (belief.span().isOpen() ? "" : belief.span().until().toString().substring(8, 10))
              + " "
              + (length == null ? "?" : length.typed().typed())
              + " "
              + belief.facts().condition().word());
    }
    return String.join("; ", told);
  }

  @Test
  void aChangeSplitsWhatWasBelieved() {
    List<Belief> held = List.of(held(1, 0, 0, NOTHING.withLength(metres("4.0"))));
    FactTimeline change = FactTimeline.of(held, day(9), f -> f.withLength(metres("3.9")));
    assertThat(change.retired()).containsExactly(held.get(0));
    assertThat(told(change.taken())).isEqualTo("01-10 4.0 usable; 10- 3.9 usable");
  }

  @Test
  void aChangeOnTheVeryMomentOfABeliefReplacesIt() {
    List<Belief> held = List.of(held(1, 0, 0, NOTHING));
    FactTimeline change = FactTimeline.of(held, day(0), f -> f.withLength(metres("4.0")));
    assertThat(told(change.taken())).isEqualTo("01- 4.0 usable");
  }

  @Test
  void aFactHoldsUntilTheSameFactWasNextRecordedToChangeAndNoLonger() {
    ComponentFacts four = NOTHING.withLength(metres("4.0"));
    List<Belief> held =
        List.of(
            held(1, 0, 4, four),
            held(2, 4, 9, four.withCondition(Condition.QUARANTINED, "wet")),
            held(3, 9, 14, four.withLength(metres("3.9"))),
            held(4, 14, 0, four));
    FactTimeline change = FactTimeline.of(held, day(0), f -> f.withLength(metres("4.5")));
    assertThat(told(change.taken())).isEqualTo("01-05 4.5 usable; 05-10 4.5 quarantined");
    assertThat(change.retired()).containsExactly(held.get(0), held.get(1));
  }

  @Test
  void aChangeBeforeTheFirstBeliefReachesBack() {
    List<Belief> held = List.of(held(1, 9, 0, NOTHING.withLength(metres("4.0"))));
    FactTimeline change = FactTimeline.of(held, day(2), f -> f.withLength(metres("4.5")));
    assertThat(told(change.taken())).isEqualTo("03- 4.5 usable");
    FactTimeline same = FactTimeline.of(held, day(2), f -> f);
    assertThat(same.retired()).isEmpty();
    assertThat(told(same.taken())).isEqualTo("03-10 4.0 usable");
  }

  @Test
  void sayingWhatIsBelievedAlreadyChangesNothing() {
    List<Belief> held = List.of(held(1, 0, 0, NOTHING.withTip(new BigDecimal("8.0"))));
    FactTimeline change = FactTimeline.of(held, day(3), f -> f.withTip(new BigDecimal("8.00")));
    assertThat(change.isEmpty()).isTrue();
    assertThat(change.retired()).isEmpty();
  }

  /** Whatever is changed when: the beliefs still cover all time from the first, without overlap. */
  @Property
  void beliefsNeverOverlapNorLeaveAGap(
      @ForAll @Size(min = 1, max = 8) List<@IntRange(min = 0, max = 20) Integer> changes) {
    List<Belief> held = List.of(held(1, 10, 0, NOTHING));
    int next = 2;
    for (int i = 0; i < changes.size(); i++) {
      int tip = i + 1;
      FactTimeline change =
          FactTimeline.of(held, day(changes.get(i)), f -> f.withTip(BigDecimal.valueOf(tip)));
      List<Belief> now = new ArrayList<>(held);
      assertThat(now).containsAll(change.retired());
      now.removeAll(change.retired());
      for (Belief belief : change.taken()) {
        now.add(new Belief(next++, belief.facts(), belief.span(), null, null));
      }
      now.sort(Comparator.comparing(belief -> belief.span().from()));
      held = now;
    }
    List<Belief> end = held;
    assertThat(end.get(end.size() - 1).span().isOpen()).isTrue();
    IntStream.range(1, end.size())
        .forEach(
            i -> assertThat(end.get(i).span().from()).isEqualTo(end.get(i - 1).span().until()));
  }
}
