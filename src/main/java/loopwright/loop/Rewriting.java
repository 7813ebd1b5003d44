package loopwright.loop;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import loopwright.time.Span;
import org.jooq.DSLContext;

/**
 * Works out which beliefs a chain seen at a moment ends and begins. From that moment on each slot
 * holds what was seen, until the next thing known about the slot or about the part; what was
 * believed before that moment stays. A part believed to be elsewhere is taken from there, and that
 * slot becomes unknown; unless somebody claimed it there for the very same moment: then one of the
 * two misread a serial, the part stays on record where it is, and the slot seen here is unknown.
 */
final class Rewriting {
  private final PlacementStore placements;
  private final DSLContext sql;
  private final long point;
  private final Instant at;
  private final String source;
  private final Claims claims;
  private final Map<Long, Placed> retired = new LinkedHashMap<>();
  private final List<Placed> taken = new ArrayList<>();
  private final Set<Long> displaced = new TreeSet<>();
  private final List<Contested> contested = new ArrayList<>();

  /** Whether somebody said for exactly that moment what was fitted at the point. */
  interface Claims {
    boolean claimedAt(DSLContext sql, long point, Instant at);
  }

  /**
   * A part seen here that somebody claimed elsewhere for the same moment.
   *
   * @param slot in which it was seen at the point
   * @param standing the other claim, as it stays on record
   */
  record Contested(Content.Part part, Instant at, long point, Slot slot, Placed standing) {}

  private Rewriting(
      PlacementStore placements,
      DSLContext sql,
      long point,
      Instant at,
      String source,
      Claims claims) {
    this.claims = claims;
    this.placements = placements;
    this.sql = sql;
    this.point = point;
    this.at = at;
    this.source = source;
  }

  static Rewriting of(
      PlacementStore placements,
      DSLContext sql,
      long point,
      Instant at,
      String source,
      Claims claims,
      Chain chain) {
    Rewriting rewriting = new Rewriting(placements, sql, point, at, source, claims);
    Map<Slot, Placed> now = new LinkedHashMap<>();
    placements.at(sql, point, at).forEach(placed -> now.put(placed.slot(), placed));
    for (Slot slot : Slot.values()) {
      Optional<Placed> believed = Optional.ofNullable(now.get(slot));
      rewriting.slot(slot, believed, rewriting.credible(slot, chain.in(slot)), chain);
    }
    return rewriting;
  }

  /** What can be taken up of what was seen: not a part that is claimed elsewhere just then. */
  private Content credible(Slot slot, Content seen) {
    if (seen instanceof Content.Part part) {
      Optional<Placed> other =
          placements
              .of(sql, part, at)
              .filter(elsewhere -> elsewhere.point() != point)
              .filter(elsewhere -> claims.claimedAt(sql, elsewhere.point(), at));
      if (other.isPresent()) {
        contested.add(new Contested(part, at, point, slot, other.get()));
        return new Content.Unknown();
      }
    }
    return seen;
  }

  private void slot(Slot slot, Optional<Placed> believed, Content seen, Chain chain) {
    if (believed.map(Placed::content).filter(seen::equals).isPresent()) {
      return;
    }
    if (believed.isEmpty() && !chain.slots().containsKey(slot)) {
      return;
    }
    Instant until =
        believed.map(b -> b.span().until()).orElse(placements.nextInSlot(sql, point, slot, at));
    believed.ifPresent(this::endHere);
    if (seen instanceof Content.Part part) {
      placements.of(sql, part, at).ifPresent(this::takeFromElsewhere);
      Instant nextPlace = placements.nextOfPart(sql, part, at);
      until = nextPlace.isBefore(until) ? nextPlace : until;
    }
    taken.add(Placed.fresh(point, slot, seen, new Span(at, until), source));
  }

  private void endHere(Placed believed) {
    if (retired.put(believed.placement(), believed) == null
        && believed.span().from().isBefore(at)) {
      taken.add(believed.during(new Span(believed.span().from(), at)));
    }
  }

  private void takeFromElsewhere(Placed elsewhere) {
    endHere(elsewhere);
    if (elsewhere.point() != point) {
      displaced.add(elsewhere.point());
      Span rest = new Span(at, elsewhere.span().until());
      taken.add(
          Placed.fresh(
              elsewhere.point(), elsewhere.slot(), new Content.Unknown(), rest, "displaced"));
    }
  }

  Collection<Placed> retired() {
    return retired.values();
  }

  List<Placed> taken() {
    return taken;
  }

  /** Other points that lost a part. */
  Set<Long> displaced() {
    return displaced;
  }

  /** Parts that are claimed for the same moment elsewhere. */
  List<Contested> contested() {
    return contested;
  }

  /** Components that came or went. */
  Set<Long> components() {
    Set<Long> components = new TreeSet<>();
    retired.values().forEach(placed -> placed.content().component().ifPresent(components::add));
    taken.forEach(placed -> placed.content().component().ifPresent(components::add));
    return components;
  }

  boolean changesNothing() {
    return retired.isEmpty() && taken.isEmpty();
  }
}
