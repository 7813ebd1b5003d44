package loopwright.sheet;

import java.util.ArrayList;
import java.util.List;
import loopwright.problem.Problem;
import loopwright.problem.Refused;

/**
 * All that is wrong with one or more files, so that a person can mend everything at once. Past
 * {@value #MOST_KEPT} only the count goes on. Used by one thread.
 */
public final class Complaints {
  static final int MOST_KEPT = 10_000;

  private final List<Complaint> kept = new ArrayList<>();
  private int total;

  /**
   * @param parts file, row, column and whatever else the sentence takes
   */
  public void add(Problem problem, Object... parts) {
    total++;
    if (kept.size() < MOST_KEPT) {
      kept.add(Complaint.of(problem, parts));
    }
  }

  public void add(Refused refused) {
    add(refused.problem(), refused.parts().toArray());
  }

  public boolean isEmpty() {
    return total == 0;
  }

  /** In the order in which they were found. */
  public List<Complaint> kept() {
    return List.copyOf(kept);
  }

  /** How many there were, kept or not. */
  public int total() {
    return total;
  }
}
