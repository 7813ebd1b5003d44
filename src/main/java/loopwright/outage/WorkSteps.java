package loopwright.outage;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import loopwright.db.Tx;
import loopwright.problem.Refused;
import loopwright.problem.Text;
import org.jooq.DSLContext;

/** The steps of each kind of work: the shop's own, else the program's. */
public final class WorkSteps {
  private static final int MOST_CHARACTERS = 8_000;

  private final ScopeStore store = new ScopeStore();

  /**
   * What the shop wrote.
   *
   * @param version counted from 1
   */
  record Written(int version, List<String> steps) {
    Written {
      steps = List.copyOf(steps);
    }
  }

  /** By kind of work, in the order in which work is done. */
  public Map<Work, List<String>> all(DSLContext sql) {
    Map<Work, List<String>> all = new EnumMap<>(Work.class);
    Map<Work, Written> written = store.templates(sql);
    for (Work work : Work.values()) {
      Written own = written.get(work);
      all.put(work, own == null ? work.builtInSteps() : own.steps());
    }
    return all;
  }

  /** Of which version the steps are; 0 for the program's own. */
  int version(DSLContext sql, Work work) {
    Written written = store.templates(sql).get(work);
    return written == null ? 0 : written.version();
  }

  /**
   * Writes the shop's own steps; packs that were issued keep theirs.
   *
   * @param seen the version that the writer saw
   * @throws Refused if there is no step, or somebody wrote others meanwhile
   */
  void write(Tx tx, Work work, int seen, String text) {
    List<String> steps =
        Text.needed("the steps", text, MOST_CHARACTERS)
            .lines()
            .map(String::strip)
            .filter(line -> !line.isEmpty())
            .toList();
    if (steps.isEmpty()) {
      throw new Refused(OutageProblem.NO_STEPS);
    }
    if (version(tx.sql(), work) != seen) {
      throw new Refused(OutageProblem.STEPS_CHANGED);
    }
    store.addTemplate(tx, work, seen + 1, steps);
  }
}
