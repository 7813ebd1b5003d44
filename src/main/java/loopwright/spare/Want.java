package loopwright.spare;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import loopwright.exchange.Suiting;
import loopwright.loop.Judging;
import loopwright.loop.Slot;
import loopwright.outage.Outage;
import loopwright.outage.OutageState;
import org.jspecify.annotations.Nullable;

/**
 * A part that a loop of an open outage wants.
 *
 * @param slot that it is for; empty where any one of several would put the loop right
 * @param why in a clause
 * @param held what is put aside for it now; null for none
 * @param votes whether a channel of the loop votes before a machine trips
 * @param loop as it is judged now
 * @param places that could take a part
 * @param options parts in stock that leave the lengths in balance, and what is put aside
 */
record Want(
    Outage outage,
    long point,
    String tag,
    String slot,
    String why,
    @Nullable Held held,
    boolean votes,
    Judging.Judged loop,
    List<Suiting.Place> places,
    List<Option> options) {

  /**
   * Who goes first: outages under way, then those that begin first; within an outage loops that
   * vote before a trip, then by tag. Own choice.
   */
  static final Comparator<Want> ORDER =
      Comparator.comparing((Want want) -> !want.isFixed())
          .thenComparing(want -> want.outage().state() != OutageState.UNDER_WAY)
          .thenComparing(want -> want.outage().begins())
          .thenComparing(want -> want.outage().id())
          .thenComparing(want -> !want.votes())
          .thenComparing(Want::tag)
          .thenComparing(Want::slot);

  Want {
    places = List.copyOf(places);
    options = List.copyOf(options);
  }

  /**
   * A part that may sit in one of its slots.
   *
   * @param work weight of the move
   * @param sort parts of one sort are alike but for their serials
   */
  record Option(
      long part, String label, String words, String where, Slot slot, int work, String sort) {}

  /** What an outage under way has put aside is on its way to the machine and stays. */
  boolean isFixed() {
    return held != null && outage.state() == OutageState.UNDER_WAY;
  }

  boolean holds(long part) {
    return held != null && held.component() == part;
  }

  String loopAndOutage() {
    return tag + " (" + outage.number() + ")";
  }

  /** What would do, in words. */
  String needs() {
    return places.stream()
        .map(Suiting.Place::inWords)
        .distinct()
        .collect(Collectors.joining("; or "));
  }

  /** Why this one goes before another, as a clause. */
  String before(Want other) {
    if (isFixed()) {
      return "its outage is under way and has put its part aside";
    }
    if (outage.id() == other.outage().id()) {
      return votes == other.votes()
          ? "of loops alike the tag decides"
          : "it votes before a trip and the other one does not";
    }
    if (outage.state() == OutageState.UNDER_WAY
        && other.outage().state() != OutageState.UNDER_WAY) {
      return "its outage is under way";
    }
    return outage.begins().equals(other.outage().begins())
        ? "its outage was planned first"
        : "its outage begins on " + outage.begins() + ", not on " + other.outage().begins();
  }
}
