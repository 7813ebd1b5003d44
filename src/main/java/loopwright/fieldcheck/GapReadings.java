package loopwright.fieldcheck;

import java.time.Instant;
import java.time.InstantSource;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.db.Tx;
import loopwright.problem.Refused;
import loopwright.time.Viewpoint;
import org.jooq.DSLContext;

/** The one place for gap voltages, whoever brings them: a form, a file, a round of the plant. */
public final class GapReadings {
  private final GapReadingStore store = new GapReadingStore();
  private final InstantSource clock;

  public GapReadings(InstantSource clock) {
    this.clock = clock;
  }

  /**
   * Keeps one.
   *
   * @return its number
   * @throws Refused if the moment is in the future, or {@link FieldCheckProblem#ALREADY_KEPT}
   */
  public long keep(Tx tx, NewGapReading fresh) {
    store.hold(tx, List.of(fresh.point()));
    if (same(tx.sql(), fresh).isPresent()) {
      throw new Refused(FieldCheckProblem.ALREADY_KEPT);
    }
    return add(tx, fresh);
  }

  /**
   * Keeps many in one change; those that are kept already are left out.
   *
   * @return how many were new
   * @throws Refused if a moment is in the future
   */
  public int keepAll(Tx tx, List<NewGapReading> all) {
    store.hold(tx, all.stream().map(NewGapReading::point).toList());
    List<NewGapReading> fresh = store.withoutKnown(tx.sql(), all);
    fresh.forEach(reading -> add(tx, reading));
    return fresh.size();
  }

  private long add(Tx tx, NewGapReading fresh) {
    if (fresh.readAt().isAfter(clock.instant())) {
      throw new Refused(FieldCheckProblem.IN_FUTURE, fresh.readAt());
    }
    return store.add(tx, fresh);
  }

  /** That very reading, if it is kept already: a form sent twice gives one record. */
  public Optional<GapReading> same(DSLContext sql, NewGapReading fresh) {
    return store.same(sql, fresh);
  }

  /** Of one point, newest first, as seen from that viewpoint. */
  public List<GapReading> ofPoint(DSLContext sql, long point, Viewpoint viewpoint, int most) {
    return store.ofPoint(sql, point, viewpoint, most);
  }

  /**
   * The newest of each point in that state, read before that moment; points without one are not in
   * it.
   */
  public Map<Long, GapReading> newest(
      DSLContext sql, Collection<Long> points, MachineState state, Instant before) {
    return store.newest(sql, points, state, before);
  }

  /** All that one change brought, in the order in which they were entered. */
  public List<GapReading> ofChange(DSLContext sql, long change) {
    return store.ofChange(sql, change);
  }

  /** All of several points read from that moment on, oldest first. */
  public List<GapReading> since(DSLContext sql, Collection<Long> points, Instant from) {
    return store.since(sql, points, from);
  }
}
