package loopwright.loop;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import loopwright.time.Span;
import org.jooq.DSLContext;

/**
 * Which beliefs a correction gives up and takes up. What was believed of the slot before and after
 * its range stays; where that is the same thing, it becomes one stay with the corrected one.
 *
 * @param line everything believed of the slot, oldest first
 * @param taken what is believed instead of {@code retired}; empty where nothing changes
 * @param inTheWay where the part is on record elsewhere in that time; then nothing may be changed
 */
record CorrectionPlan(
    Correction correction,
    List<Placed> line,
    List<Placed> retired,
    List<Placed> taken,
    Optional<Placed> inTheWay) {

  static CorrectionPlan of(PlacementStore placements, DSLContext sql, Correction correction) {
    List<Placed> line =
        placements.ofPoint(sql, correction.point()).stream()
            .filter(placed -> placed.slot() == correction.slot())
            .toList();
    List<Placed> part =
        correction.content() instanceof Content.Part asked
            ? placements.ofComponent(sql, asked.number())
            : List.of();
    return of(correction, line, part);
  }

  /**
   * @param part where the part to be recorded is believed to have been
   */
  static CorrectionPlan of(Correction correction, List<Placed> line, List<Placed> part) {
    Optional<Placed> inTheWay =
        part.stream()
            .filter(stay -> stay.content().equals(correction.content()))
            .filter(stay -> !isHere(stay, correction))
            .filter(stay -> stay.span().overlaps(correction.span()))
            .findFirst();
    boolean recorded =
        line.stream()
            .filter(stay -> stay.content().equals(correction.content()))
            .anyMatch(stay -> covers(stay.span(), correction.span()));
    List<Placed> retired =
        recorded ? List.of() : line.stream().filter(stay -> gives(stay, correction)).toList();
    return new CorrectionPlan(
        correction, line, retired, recorded ? List.of() : taken(correction, retired), inTheWay);
  }

  private static boolean isHere(Placed stay, Correction correction) {
    return stay.point() == correction.point() && stay.slot() == correction.slot();
  }

  private static boolean covers(Span whole, Span part) {
    return !whole.from().isAfter(part.from()) && !whole.until().isBefore(part.until());
  }

  /** Whether the stay shares a moment with the range, or is the same thing next to it. */
  private static boolean gives(Placed stay, Correction correction) {
    boolean beside =
        stay.span().until().equals(correction.span().from())
            || stay.span().from().equals(correction.span().until());
    return stay.span().overlaps(correction.span())
        || beside && stay.content().equals(correction.content());
  }

  private static List<Placed> taken(Correction correction, List<Placed> retired) {
    Instant from = correction.span().from();
    Instant until = correction.span().until();
    List<Placed> taken = new ArrayList<>();
    for (Placed stay : retired) {
      Span span = stay.span();
      if (stay.content().equals(correction.content())) {
        from = span.from().isBefore(from) ? span.from() : from;
        until = span.until().isAfter(until) ? span.until() : until;
      } else {
        keep(taken, stay, span.from(), correction.span().from());
        keep(taken, stay, correction.span().until(), span.until());
      }
    }
    Span whole = new Span(from, until);
    taken.add(
        Placed.fresh(
            correction.point(), correction.slot(), correction.content(), whole, "correction"));
    return taken;
  }

  private static void keep(List<Placed> taken, Placed stay, Instant from, Instant until) {
    if (from.isBefore(until)) {
      taken.add(stay.during(new Span(from, until)));
    }
  }

  boolean changesNothing() {
    return taken.isEmpty();
  }

  /** What is believed of the slot afterwards, oldest first. */
  List<Placed> afterwards() {
    List<Placed> after = new ArrayList<>(line);
    after.removeAll(retired);
    after.addAll(taken);
    after.sort(Comparator.comparing(placed -> placed.span().from()));
    return after;
  }

  /** Components that came or went. */
  Set<Long> components() {
    Set<Long> components = new TreeSet<>();
    retired.forEach(placed -> placed.content().component().ifPresent(components::add));
    taken.forEach(placed -> placed.content().component().ifPresent(components::add));
    return components;
  }
}
