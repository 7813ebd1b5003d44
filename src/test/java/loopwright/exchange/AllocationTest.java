package loopwright.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

/** The dealing against trying every dealing, and what is said of those left without. */
class AllocationTest {

  /** What a dealing is worth: who is served, in order, and the cost. */
  private record Worth(List<Boolean> served, int cost) {
    int count() {
      return (int) served.stream().filter(one -> one).count();
    }

    boolean isBetterThan(Worth other) {
      if (count() != other.count()) {
        return count() > other.count();
      }
      for (int i = 0; i < served.size(); i++) {
        if (!served.get(i).equals(other.served.get(i))) {
          return served.get(i);
        }
      }
      return cost < other.cost;
    }
  }

  private static Worth best(List<Allocation.Wish> wishes) {
    return best(wishes, 0, new HashSet<>(), new ArrayList<>(), 0);
  }

  private static Worth best(
      List<Allocation.Wish> wishes, int at, Set<Long> taken, List<Boolean> served, int cost) {
    if (at == wishes.size()) {
      return new Worth(List.copyOf(served), cost);
    }
    served.add(false);
    Worth best = best(wishes, at + 1, taken, served, cost);
    served.set(at, true);
    for (Allocation.Choice choice : wishes.get(at).choices()) {
      if (taken.add(choice.part())) {
        Worth other = best(wishes, at + 1, taken, served, cost + choice.cost());
        taken.remove(choice.part());
        best = other.isBetterThan(best) ? other : best;
      }
    }
    served.remove(at);
    return best;
  }

  private static Worth of(List<Allocation.Wish> wishes, Allocation allocation) {
    List<Boolean> served = new ArrayList<>();
    Set<Long> taken = new HashSet<>();
    int cost = 0;
    for (int i = 0; i < wishes.size(); i++) {
      OptionalLong part = allocation.partOf(i);
      served.add(part.isPresent());
      if (part.isPresent()) {
        assertThat(taken.add(part.getAsLong())).as("a part goes to one wish").isTrue();
        Allocation.Choice choice = wishes.get(i).of(part.getAsLong());
        assertThat(choice).as("a wish gets a part that would do").isNotNull();
        cost += choice.cost();
      }
    }
    return new Worth(served, cost);
  }

  @Provide
  Arbitrary<List<Allocation.Wish>> wishes() {
    Arbitrary<Allocation.Choice> choice =
        Arbitraries.longs()
            .between(1, 5)
            .flatMap(
                part ->
                    Arbitraries.integers()
                        .between(0, 30)
                        .map(cost -> new Allocation.Choice(part, cost)));
    return choice
        .list()
        .ofMaxSize(4)
        .uniqueElements(Allocation.Choice::part)
        .map(Allocation.Wish::new)
        .list()
        .ofMaxSize(6);
  }

  @Property(tries = 600)
  void noDealingServesMoreOrEarlierOrForLess(@ForAll("wishes") List<Allocation.Wish> wishes) {
    Allocation allocation = Allocation.of(wishes);
    Worth found = of(wishes, allocation);
    assertThat(found).isEqualTo(best(wishes));
    assertThat(allocation.fulfilled()).isEqualTo(found.count());
    assertThat(allocation.cost()).isEqualTo(found.cost());
  }

  /** Tried by taking rivals out one by one: only then is the wish fulfilled with all the others. */
  @Property(tries = 400)
  void exactlyTheRivalsStandInTheWay(@ForAll("wishes") List<Allocation.Wish> wishes) {
    Allocation allocation = Allocation.of(wishes);
    int served = allocation.fulfilled();
    for (int wish = 0; wish < wishes.size(); wish++) {
      if (allocation.partOf(wish).isEmpty()) {
        Allocation.Without why = allocation.without(wish);
        assertThat(why.parts()).hasSameSizeAs(why.rivals());
        int me = wish;
        assertThat(why.rivals()).as("they go before").allMatch(rival -> rival < me);
        for (int other = 0; other < wishes.size(); other++) {
          if (allocation.partOf(other).isPresent()) {
            assertThat(served(wishes, allocation, wish, other) == served)
                .as("wish %s instead of %s", wish, other)
                .isEqualTo(why.rivals().contains(other));
          }
        }
      }
    }
  }

  /** How many of those served, with one of them left out and another taken in, can be served. */
  private static int served(List<Allocation.Wish> wishes, Allocation allocation, int in, int out) {
    return Allocation.of(
            IntStream.range(0, wishes.size())
                .filter(one -> one == in || one != out && allocation.partOf(one).isPresent())
                .mapToObj(wishes::get)
                .toList())
        .fulfilled();
  }

  private static Allocation.Wish wish(long... parts) {
    return new Allocation.Wish(
        java.util.Arrays.stream(parts).mapToObj(part -> new Allocation.Choice(part, 1)).toList());
  }

  @Test
  void aWishWithOneChoiceMovesAnotherToItsSecond() {
    Allocation allocation = Allocation.of(List.of(wish(1, 2), wish(1)));
    assertThat(allocation.partOf(0)).hasValue(2);
    assertThat(allocation.partOf(1)).hasValue(1);
    assertThatThrownBy(() -> allocation.without(0)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void theLastOfThoseThatShareGoesWithout() {
    Allocation allocation =
        Allocation.of(List.of(wish(1, 2), wish(2, 3), wish(3), wish(1), wish()));
    assertThat(allocation.fulfilled()).isEqualTo(3);
    assertThat(allocation.without(3))
        .isEqualTo(new Allocation.Without(List.of(1L, 2L, 3L), List.of(0, 1, 2)));
    assertThat(allocation.without(4).rivals()).isEmpty();
  }

  @Test
  void hundredsOfWishesAreDealtAtOnce() {
    List<Allocation.Wish> many =
        IntStream.range(0, 300)
            .mapToObj(
                i ->
                    wish(
                        IntStream.range(0, 40)
                            .mapToLong(k -> (i * 7 + k * 11) % 250)
                            .distinct()
                            .toArray()))
            .toList();
    assertThat(Allocation.of(many).fulfilled()).isEqualTo(250);
  }

  @Test
  void whatCantBeDealtIsRefused() {
    assertThat(Allocation.of(List.of()).fulfilled()).isZero();
    assertThatThrownBy(() -> new Allocation.Choice(1, -1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Allocation.of(List.of(wish(1, 1))))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
