package loopwright.loop;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import loopwright.db.Chunks;
import loopwright.db.Tx;

/**
 * What files say was fitted, taken up in one go: many points are judged together, moment by moment,
 * because one outage gives hundreds of loops the same dates.
 *
 * @param retired beliefs held now that are given up
 * @param taken beliefs in their place and new ones; must not overlap what stays
 * @param notes what the files say of a point at a moment
 */
public record ImportedPlacements(
    Collection<Placed> retired, Collection<Placed> taken, Map<Place, String> notes) {
  static final int AT_ONCE = 500;

  /** A point at a moment. */
  public record Place(long point, Instant at) {}

  void record(
      Tx tx,
      PlacementStore placements,
      PartFacts parts,
      Function<List<Long>, Map<Long, Judging.Subject>> subjects,
      Judging judging,
      EventStore events) {
    placements.rewrite(tx, retired, taken);
    parts.placementsChanged(tx, components());
    moments()
        .forEach(
            (at, points) -> {
              for (List<Long> some : Chunks.of(points, AT_ONCE)) {
                Collection<Judging.Subject> judged = subjects.apply(some).values();
                judging.judge(tx.sql(), judged, at).forEach(j -> event(tx, events, j, at));
              }
            });
    displaced(tx, events);
  }

  private record Begun(long point, Slot slot, Content content, Instant from) {
    static Begun of(Placed placed) {
      return new Begun(placed.point(), placed.slot(), placed.content(), placed.span().from());
    }
  }

  /** A belief that only got another end is no event at its beginning. */
  private Map<Instant, Set<Long>> moments() {
    Set<Begun> before = retired.stream().map(Begun::of).collect(Collectors.toSet());
    Map<Instant, Set<Long>> moments = new TreeMap<>();
    for (Placed placed : taken) {
      if (placed.source().equals("import") && !before.contains(Begun.of(placed))) {
        moments.computeIfAbsent(placed.span().from(), m -> new TreeSet<>()).add(placed.point());
      }
    }
    return moments;
  }

  private void event(Tx tx, EventStore events, Judging.Judged judged, Instant at) {
    long point = judged.subject().point();
    String note = notes.getOrDefault(new Place(point, at), "From the shop's files.");
    events.add(tx, point, "import", at, judged.judgement(), note);
  }

  private void displaced(Tx tx, EventStore events) {
    for (Placed placed : taken) {
      if (placed.source().equals("displaced") && placed.content() instanceof Content.Unknown) {
        Instant at = placed.span().from();
        events.add(
            tx, placed.point(), "displaced", at, null, "A part of this loop was found elsewhere.");
      }
    }
  }

  private Set<Long> components() {
    Set<Long> components = new TreeSet<>();
    retired.forEach(placed -> placed.content().component().ifPresent(components::add));
    taken.forEach(placed -> placed.content().component().ifPresent(components::add));
    return components;
  }

  Set<Long> points() {
    Set<Long> points = new TreeSet<>();
    retired.forEach(placed -> points.add(placed.point()));
    taken.forEach(placed -> points.add(placed.point()));
    return points;
  }
}
