package loopwright.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import loopwright.matching.PartKind;
import loopwright.units.Length;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** The flow against trying every dealing: as many loops in balance, moved as little. */
class LengthFlowTest {
  /** What a dealing is worth: loops in balance, and the weight of its moves. */
  private record Worth(int inBalance, int weight) {
    boolean isBetterThan(Worth other) {
      return inBalance > other.inBalance || inBalance == other.inBalance && weight < other.weight;
    }
  }

  @Provide
  Arbitrary<List<LoopLengths>> loops() {
    Arbitrary<LoopLengths> one =
        Combinators.combine(
                Arbitraries.integers().between(1, 3),
                Arbitraries.of("3.5", "4.0", "4.5", "5.0"),
                Arbitraries.of("4.5", "5.0", "5.5", "6.0"),
                Arbitraries.of("0.05", "0.05", "0.5"))
            .as(
                (train, cable, driver, tolerance) ->
                    tolerant(
                        ExchangeLoops.loop("train " + train, "q5", "?", "1.0", cable, driver),
                        tolerance));
    return one.list().ofMinSize(1).ofMaxSize(7).map(LengthFlowTest::tagged);
  }

  private static LoopLengths tolerant(LoopLengths loop, String tolerance) {
    return new LoopLengths(
        loop.tag(),
        loop.site(),
        loop.train(),
        loop.parts(),
        loop.balance(),
        Length.ofMetres(tolerance),
        loop.family());
  }

  private static List<LoopLengths> tagged(List<LoopLengths> loops) {
    List<LoopLengths> tagged = new ArrayList<>();
    for (LoopLengths loop : loops) {
      tagged.add(
          new LoopLengths(
              "K-" + tagged.size(),
              loop.site(),
              loop.train(),
              loop.parts(),
              loop.balance(),
              loop.tolerance(),
              loop.family()));
    }
    return tagged;
  }

  @Property(tries = 400)
  void noDealingIsBetter(@ForAll("loops") List<LoopLengths> loops) {
    for (PartKind kind : List.of(PartKind.CABLE, PartKind.DRIVER)) {
      Weights weights = Weights.USUAL;
      List<Seat> seats =
          loops.stream().map(loop -> new Seat(loop, loop.only(kind).orElseThrow())).toList();
      Worth found = worth(loops, Exchanges.best(seats, weights));
      Worth best = tryAll(seats, weights);
      assertThat(found).isEqualTo(best);
    }
  }

  /** What the exchanges themselves say, move by move. */
  private static Worth worth(List<LoopLengths> loops, List<Exchange> exchanges) {
    int inBalance = (int) loops.stream().filter(LoopLengths::isInBalance).count();
    int weight = 0;
    Set<String> moved = new HashSet<>();
    for (Exchange exchange : exchanges) {
      weight += exchange.weight();
      for (Exchange.Move move : exchange.moves()) {
        assertThat(moved.add(move.to())).as("each loop gets one part").isTrue();
        LoopLengths to = named(loops, move.to());
        assertThat(to.balanceWith(move.takesPlaceOf(), move.part().length()))
            .isEqualTo(move.after());
        inBalance += (move.inBalance() ? 1 : 0) - (to.isInBalance() ? 1 : 0);
      }
      assertThat(exchange.moves().stream().map(Exchange.Move::from).sorted().toList())
          .as("each loop gives one part")
          .isEqualTo(exchange.loops());
    }
    return new Worth(inBalance, weight);
  }

  private static LoopLengths named(List<LoopLengths> loops, String tag) {
    return loops.stream().filter(loop -> loop.tag().equals(tag)).findFirst().orElseThrow();
  }

  private static Worth tryAll(List<Seat> seats, Weights weights) {
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < seats.size(); i++) {
      order.add(i);
    }
    return permuted(seats, weights, order, 0, new Worth(-1, 0));
  }

  private static Worth permuted(
      List<Seat> seats, Weights weights, List<Integer> order, int from, Worth bestYet) {
    if (from == order.size()) {
      Worth worth = worth(seats, weights, order);
      return worth.isBetterThan(bestYet) ? worth : bestYet;
    }
    Worth best = bestYet;
    for (int i = from; i < order.size(); i++) {
      java.util.Collections.swap(order, from, i);
      best = permuted(seats, weights, order, from + 1, best);
      java.util.Collections.swap(order, from, i);
    }
    return best;
  }

  /** Seat i gets the part of seat {@code order.get(i)}. */
  private static Worth worth(List<Seat> seats, Weights weights, List<Integer> order) {
    int inBalance = 0;
    int weight = 0;
    for (int i = 0; i < seats.size(); i++) {
      Seat seat = seats.get(i);
      Seat giver = seats.get(order.get(i));
      inBalance += seat.inBalanceWith(giver.length()) ? 1 : 0;
      if (order.get(i) != i) {
        weight += weights.of(seat.part().kind());
        weight += seat.train().equals(giver.train()) ? 0 : weights.otherTrain();
      }
    }
    return new Worth(inBalance, weight);
  }
}
