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
import org.jspecify.annotations.Nullable;

/** The one place for gap voltages, whoever brings them: a form, a file, a round of the plant. */
public final class GapReadings {
  private final GapReadingStore store = new GapReadingStore();
  private final BesideStore beside = new BesideStore();
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
    hold(tx, all.stream().map(NewGapReading::point).toList());
    return keepHeld(tx, all);
  }

  /** Until this change ends, nobody else keeps a reading of these points. */
  public void hold(Tx tx, Collection<Long> points) {
    store.hold(tx, points);
  }

  /**
   * As {@link #keepAll}, of points that are held already: a long file keeps one part after another.
   *
   * @throws Refused if a moment is in the future
   */
  public int keepHeld(Tx tx, List<NewGapReading> all) {
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

  /**
   * A reading with the newest one that compares with it, taken before the first of its own change.
   *
   * @param before null where none compares
   */
  public record Beside(GapReading now, @Nullable GapReading before) {}

  /**
   * What one change brought, each reading beside the one before it, in the order in which it was
   * entered. Only readings that moved so far, or lie near an end of the output, are given.
   *
   * @param after number of the last reading that was seen
   */
  public List<Beside> besides(DSLContext sql, long change, Notable notable, long after, int most) {
    return beside.notable(sql, change, notable, after, most);
  }

  /** What one change brought of those points, each beside the one before it. */
  public List<Beside> besides(DSLContext sql, long change, Collection<Long> points) {
    return beside.ofPoints(sql, change, points);
  }

  /** How many readings one change brought, and how many of them have one before that compares. */
  public Counted count(DSLContext sql, long change) {
    return beside.count(sql, change);
  }

  /** Numbers of readings. */
  public record Counted(int all, int compared) {}

  /**
   * What makes a reading worth a look.
   *
   * @param moved V, to either side, since the one before
   * @param above V; a less negative output is near its upper end
   * @param below V; a more negative one near its lower end
   */
  public record Notable(double moved, double above, double below) {}

  /** All of several points read from that moment on, oldest first. */
  public List<GapReading> since(DSLContext sql, Collection<Long> points, Instant from) {
    return store.since(sql, points, from);
  }
}
