package loopwright.temporary;

import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.db.Tx;
import loopwright.loop.Configuration;
import loopwright.loop.Placed;
import loopwright.outage.CalendarDays;
import loopwright.outage.Suggestion;
import loopwright.outage.SuggestionSource;
import loopwright.problem.Refused;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;

/**
 * Marks parts as fitted for a time. The mark ends by itself when the part comes out, whichever way
 * that is told.
 */
public final class TemporaryFits implements SuggestionSource, CalendarDays {
  private final TemporaryStore store = new TemporaryStore();
  private final Configuration configuration;
  private final InstantSource clock;

  public TemporaryFits(Configuration configuration, InstantSource clock) {
    this.configuration = configuration;
    this.clock = clock;
  }

  /** Parts known to sit in that loop now, along the chain. */
  List<Placed> fitted(DSLContext sql, long point) {
    return configuration.at(sql, point, clock.instant()).stream()
        .filter(placed -> placed.content().component().isPresent())
        .toList();
  }

  /**
   * Marks what sits in a slot.
   *
   * @param today on the site's calendar
   * @throws Refused if nothing is known to sit there, the day is over or it is marked already
   */
  void mark(Tx tx, long point, String tag, String slot, TemporaryStore.Said said, LocalDate today) {
    long component = component(tx.sql(), point, tag, slot);
    refusePast(said.returnOn(), today);
    store.open(tx.sql(), List.of(point)).stream()
        .filter(fit -> fit.slot().equals(slot) && fit.component() == component)
        .findFirst()
        .ifPresent(
            fit -> {
              throw new Refused(TemporaryProblem.MARKED_BEFORE, fit.label(), tag);
            });
    store.add(tx, point, slot, component, said);
  }

  /**
   * Takes over a mark that was kept elsewhere until now; its day may be over.
   *
   * @throws Refused if nothing is known to sit in that slot
   */
  public void enter(
      Tx tx,
      long point,
      String slot,
      String insteadOf,
      LocalDate returnOn,
      String reason,
      String askedBy) {
    store.add(
        tx,
        point,
        slot,
        component(tx.sql(), point, "the loop", slot),
        new TemporaryStore.Said(returnOn, insteadOf, reason, askedBy));
  }

  private long component(DSLContext sql, long point, String tag, String slot) {
    return fitted(sql, point).stream()
        .filter(placed -> placed.slot().word().equals(slot))
        .flatMapToLong(placed -> placed.content().component().stream())
        .findFirst()
        .orElseThrow(() -> new Refused(TemporaryProblem.NO_PART, tag));
  }

  /**
   * Gives it another day, or says that it stays for good.
   *
   * @param returnOn null where it stays
   */
  void settle(Tx tx, long id, @Nullable LocalDate returnOn, String note, LocalDate today) {
    if (store.one(tx.sql(), id).filter(TemporaryFit::isOpen).isEmpty()) {
      throw new Refused(TemporaryProblem.NOT_OPEN);
    }
    if (returnOn != null) {
      refusePast(returnOn, today);
    }
    store.step(tx, id, returnOn, note);
  }

  private static void refusePast(LocalDate day, LocalDate today) {
    if (day.isBefore(today)) {
      throw new Refused(TemporaryProblem.PAST_DAY, day);
    }
  }

  Optional<TemporaryFit> one(DSLContext sql, long id) {
    return store.one(sql, id);
  }

  List<TemporaryFit> ofPoint(DSLContext sql, long point) {
    return store.ofPoint(sql, point);
  }

  List<TemporaryFit> ofComponent(DSLContext sql, long component) {
    return store.ofComponent(sql, component);
  }

  /** All that still sit there and are to come out. */
  List<TemporaryFit> open(DSLContext sql) {
    return store.open(sql);
  }

  /** By point, in sentences: what was still fitted for a time at that moment. */
  public Map<Long, List<String>> stillIn(DSLContext sql, Collection<Long> points, Instant at) {
    return store.openAt(sql, points, at).stream()
        .collect(
            Collectors.groupingBy(
                TemporaryFit::point,
                Collectors.mapping(fit -> fit.inWords() + ".", Collectors.toList())));
  }

  @Override
  public Map<Long, List<Suggestion.Reason>> of(
      DSLContext sql, Collection<Long> points, LocalDate until) {
    Map<Long, List<Suggestion.Reason>> reasons = new HashMap<>();
    store.open(sql, points).stream()
        .filter(fit -> !fit.returnOn().isAfter(until))
        .forEach(
            fit ->
                reasons
                    .computeIfAbsent(fit.point(), any -> new java.util.ArrayList<>())
                    .add(
                        new Suggestion.Reason(
                            Suggestion.Kind.TEMPORARY, fit.inWords() + ".", fit.href())));
    return reasons;
  }

  @Override
  public List<Day> days(DSLContext sql) {
    return store.open(sql).stream()
        .map(
            fit ->
                new Day(
                    "temporary-" + fit.id(),
                    fit.returnOn(),
                    "Temporary fit to come out: " + fit.tag(),
                    fit.inWords()))
        .toList();
  }
}
