package loopwright.exchange;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BiPredicate;
import loopwright.units.Length;

/**
 * Says from which seat each seat gets the length that it was dealt, in rings as short as can be: a
 * ring of two is a swap. Within a train first, which keeps the number of parts that change trains
 * at its least: for each length it is what the trains have too many of.
 */
final class Pairing {
  private static final int NOBODY = -1;

  private final List<Seat> seats;
  private final List<Length> dealt;
  private final int[] giver;
  private final boolean[] given;

  private Pairing(List<Seat> seats, List<Length> dealt) {
    this.seats = seats;
    this.dealt = dealt;
    this.giver = new int[seats.size()];
    this.given = new boolean[seats.size()];
    Arrays.fill(giver, NOBODY);
  }

  /**
   * The rings of seats that change parts.
   *
   * @return each ring in order: every seat gets the part of the one before it, the first that of
   *     the last
   */
  static List<List<Seat>> rings(List<Seat> seats, List<Length> dealt) {
    Pairing pairing = new Pairing(seats, dealt);
    pairing.swaps(Pairing::sameTrain);
    pairing.gifts(Pairing::sameTrain);
    pairing.swaps((a, b) -> true);
    pairing.gifts((a, b) -> true);
    pairing.shorten();
    return pairing.rings();
  }

  private static boolean sameTrain(Seat one, Seat other) {
    return one.train().equals(other.train());
  }

  private boolean moves(int seat) {
    return !dealt.get(seat).equals(seats.get(seat).length());
  }

  private boolean mayGive(int from, int to) {
    return from != to
        && moves(from)
        && moves(to)
        && !given[from]
        && giver[to] == NOBODY
        && seats.get(from).length().equals(dealt.get(to));
  }

  private void give(int from, int to) {
    giver[to] = from;
    given[from] = true;
  }

  private void swaps(BiPredicate<Seat, Seat> near) {
    for (int a = 0; a < seats.size(); a++) {
      for (int b = a + 1; b < seats.size(); b++) {
        if (mayGive(a, b) && mayGive(b, a) && near.test(seats.get(a), seats.get(b))) {
          give(a, b);
          give(b, a);
        }
      }
    }
  }

  private void gifts(BiPredicate<Seat, Seat> near) {
    for (int to = 0; to < seats.size(); to++) {
      for (int from = 0; from < seats.size() && giver[to] == NOBODY; from++) {
        if (mayGive(from, to) && near.test(seats.get(from), seats.get(to))) {
          give(from, to);
        }
      }
    }
  }

  /** Two seats of one ring that get the same length change givers: the ring falls into two. */
  private void shorten() {
    boolean again = true;
    while (again) {
      again = false;
      for (int a = 0; a < seats.size(); a++) {
        for (int b = a + 1; b < seats.size(); b++) {
          if (splits(a, b)) {
            int was = giver[a];
            giver[a] = giver[b];
            giver[b] = was;
            again = true;
          }
        }
      }
    }
  }

  private boolean splits(int a, int b) {
    return moves(a)
        && moves(b)
        && dealt.get(a).equals(dealt.get(b))
        && ring(a).contains(b)
        && crossings(giver[b], a) + crossings(giver[a], b)
            <= crossings(giver[a], a) + crossings(giver[b], b);
  }

  private int crossings(int from, int to) {
    return sameTrain(seats.get(from), seats.get(to)) ? 0 : 1;
  }

  /** Backwards from that seat: the seat, its giver, the giver's giver. */
  private List<Integer> ring(int seat) {
    List<Integer> ring = new ArrayList<>();
    int at = seat;
    do {
      ring.add(at);
      at = giver[at];
    } while (at != seat);
    return ring;
  }

  private List<List<Seat>> rings() {
    List<List<Seat>> rings = new ArrayList<>();
    boolean[] told = new boolean[seats.size()];
    for (int seat = 0; seat < seats.size(); seat++) {
      if (moves(seat) && !told[seat]) {
        List<Seat> ring = new ArrayList<>();
        for (int each : ring(seat)) {
          told[each] = true;
          ring.add(0, seats.get(each));
        }
        rings.add(ring);
      }
    }
    return rings;
  }
}
