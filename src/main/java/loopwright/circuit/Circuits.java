package loopwright.circuit;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loopwright.db.DbProblem;
import loopwright.db.Tx;
import loopwright.loop.CircuitFacts;
import loopwright.plant.PointId;
import loopwright.plant.PointWatch;
import loopwright.problem.Refused;
import loopwright.register.ChangeNote;
import org.jooq.DSLContext;

/** Field circuits of points, each version kept. */
public final class Circuits implements CircuitFacts {
  private final CircuitStore store = new CircuitStore();
  private final PointWatch watch;

  /**
   * @param watch told in the same change of each new version
   */
  public Circuits(PointWatch watch) {
    this.watch = watch;
  }

  /**
   * What is recorded of a point.
   *
   * @param version counted from 1
   * @param made who entered it, when and why
   */
  public record Recorded(FieldCircuit circuit, int version, ChangeNote made) {}

  /** Every version, the newest first; empty where nobody entered any. */
  public List<Recorded> versions(DSLContext sql, PointId point) {
    return store.versions(sql, point);
  }

  @Override
  public Map<Long, Circuit> circuits(DSLContext sql, Collection<Long> points) {
    Map<Long, Circuit> circuits = new HashMap<>();
    store.newest(sql, points).forEach((point, circuit) -> circuits.put(point, circuit.asJudged()));
    return circuits;
  }

  /** Points behind whose drivers one of the parts stands now. */
  public Set<Long> pointsWith(DSLContext sql, Collection<Long> components) {
    return store.tagsWith(sql, components).keySet();
  }

  /** The same by tag. */
  Collection<String> tagsWith(DSLContext sql, long component) {
    return store.tagsWith(sql, List.of(component)).values();
  }

  /**
   * Enters a new version.
   *
   * @param seen the version that the changer saw; 0 if there was none
   * @throws Refused {@link DbProblem#STALE} if another one came meanwhile, {@link
   *     CircuitProblem#NOTHING_NEW} if it says the same
   */
  public void record(Tx tx, PointId point, int seen, FieldCircuit circuit) {
    List<Recorded> before = versions(tx.sql(), point);
    int newest = before.isEmpty() ? 0 : before.get(0).version();
    if (newest != seen) {
      throw new Refused(DbProblem.STALE);
    }
    FieldCircuit was = before.isEmpty() ? FieldCircuit.NOT_SAID : before.get(0).circuit();
    if (was.equals(circuit)) {
      throw new Refused(CircuitProblem.NOTHING_NEW);
    }
    store.insert(tx, point, seen + 1, circuit);
    watch.pointChanged(tx, point);
  }
}
