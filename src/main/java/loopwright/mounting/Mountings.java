package loopwright.mounting;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import loopwright.db.DbProblem;
import loopwright.db.Tx;
import loopwright.problem.Refused;
import org.jooq.DSLContext;

/** How probes are mounted and reached; each change is a new version. */
public final class Mountings {
  private final MountingStore store = new MountingStore();

  /**
   * A state of it.
   *
   * @param number counted from 1
   */
  public record Version(int number, Mounting mounting, String by, String reason) {}

  /**
   * Records it anew.
   *
   * @param seen version that the writer saw; 0 for none
   * @throws Refused {@link DbProblem#STALE} if somebody recorded another meanwhile
   */
  public void record(Tx tx, long point, int seen, Mounting mounting) {
    store.hold(tx, point);
    List<Version> versions = versions(tx.sql(), point);
    int present = versions.isEmpty() ? 0 : versions.get(0).number();
    if (present != seen) {
      throw new Refused(DbProblem.STALE);
    }
    if (versions.isEmpty() || !versions.get(0).mounting().equals(mounting)) {
      store.add(tx, point, present + 1, mounting);
    }
  }

  /** Newest first. */
  List<Version> versions(DSLContext sql, long point) {
    return store.versions(sql, point);
  }

  /** What is said now of each point of which anything is. */
  public Map<Long, Mounting> of(DSLContext sql, Collection<Long> points) {
    return store.newest(sql, points);
  }
}
