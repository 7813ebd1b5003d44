package loopwright.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Which readings of one run are judged: those inside the profile's range that stand one increment
 * apart, as many as possible. Readings between them are finer steps, and where none stands one
 * increment on, the chain takes a wider step that ISF limits don't apply to. When no two readings
 * stand one increment apart, all readings in the range form the chain and no increment is judged.
 *
 * @param members places of the judged readings in the run, by rising gap
 * @param beyond the same chain carried on past both ends of the range, where only drawn
 */
record Chain(double[] gaps, Grid grid, List<Integer> members, List<Integer> beyond) {
  private static final double WIDE_STEP_BONUS = 1e-3;

  /**
   * @param gaps of a run in µm, rising
   */
  static Chain through(double[] gaps, Grid grid) {
    int first = firstInside(gaps, grid);
    int last = lastInside(gaps, grid);
    List<Integer> members = new ArrayList<>(best(gaps, grid, first, last));
    boolean anyWhole =
        pairs(members).anyMatch(pair -> isWhole(grid, gaps[pair[1]] - gaps[pair[0]]));
    if (!anyWhole || members.size() < Curve.FEWEST) {
      anyWhole = false;
      members = new ArrayList<>();
      for (int i = first; i <= last; i++) {
        members.add(i);
      }
    }
    return new Chain(
        gaps, grid, List.copyOf(members), anyWhole ? extended(gaps, grid, members) : members);
  }

  /** How many readings lie inside the range. */
  static int inside(double[] gaps, Grid grid) {
    return (int) Arrays.stream(gaps).filter(grid::holds).count();
  }

  int wholeSteps() {
    return (int)
        pairs(members).filter(pair -> isWhole(grid, gaps[pair[1]] - gaps[pair[0]])).count();
  }

  /** Does a step between two readings have the profile's width, so that ISF limits apply? */
  boolean isWhole(int from, int to) {
    return isWhole(grid, gaps[to] - gaps[from]);
  }

  /** Whole steps from one end of the profile's range to the other. */
  boolean isComplete() {
    return reachesBothEnds() && wholeSteps() == members.size() - 1;
  }

  boolean reachesBothEnds() {
    return range().fromMicrometres() <= grid.fromMicrometres() + grid.toleranceMicrometres()
        && range().toMicrometres() >= grid.toMicrometres() - grid.toleranceMicrometres();
  }

  /** The judged stretch. */
  GapRange range() {
    return new GapRange(gaps[members.get(0)], gaps[members.get(members.size() - 1)]);
  }

  private static boolean isWhole(Grid grid, double width) {
    // a hair of rounding must not decide whether a step is on the grid
    double tolerance = grid.toleranceMicrometres() * (1 + 1e-9);
    return Math.abs(width - grid.stepMicrometres()) <= tolerance;
  }

  private static Stream<int[]> pairs(List<Integer> members) {
    return IntStream.range(1, members.size())
        .mapToObj(i -> new int[] {members.get(i - 1), members.get(i)});
  }

  private static int firstInside(double[] gaps, Grid grid) {
    for (int i = 0; i < gaps.length; i++) {
      if (grid.holds(gaps[i])) {
        return i;
      }
    }
    throw new IllegalArgumentException("No reading lies inside the range.");
  }

  private static int lastInside(double[] gaps, Grid grid) {
    int last = firstInside(gaps, grid);
    while (last + 1 < gaps.length && grid.holds(gaps[last + 1])) {
      last++;
    }
    return last;
  }

  /**
   * The chain of most whole steps: for each reading the best chain that ends there (longest path).
   * Among equals the steps nearest the true width win, then the longer stretch.
   */
  private static List<Integer> best(double[] gaps, Grid grid, int first, int last) {
    double[] score = new double[gaps.length];
    int[] before = new int[gaps.length];
    Arrays.fill(before, -1);
    int best = first;
    for (int to = first; to <= last; to++) {
      for (int from = first; from < to; from++) {
        double candidate = score[from] + worth(grid, gaps[to] - gaps[from]);
        if (candidate > score[to]) {
          score[to] = candidate;
          before[to] = from;
        }
      }
      best = score[to] > score[best] ? to : best;
    }
    List<Integer> chain = new ArrayList<>();
    for (int at = best; at >= 0; at = before[at]) {
      chain.add(at);
    }
    Collections.reverse(chain);
    return chain;
  }

  private static double worth(Grid grid, double width) {
    if (isWhole(grid, width)) {
      double off = Math.abs(width - grid.stepMicrometres()) / grid.toleranceMicrometres();
      return 1 - WIDE_STEP_BONUS * off;
    }
    return width > grid.stepMicrometres() ? WIDE_STEP_BONUS : Double.NEGATIVE_INFINITY;
  }

  private static List<Integer> extended(double[] gaps, Grid grid, List<Integer> members) {
    List<Integer> all = new ArrayList<>(members);
    for (int at = next(gaps, grid, all.get(0), -1);
        at >= 0;
        at = next(gaps, grid, all.get(0), -1)) {
      all.add(0, at);
    }
    for (int at = next(gaps, grid, all.get(all.size() - 1), 1);
        at >= 0;
        at = next(gaps, grid, all.get(all.size() - 1), 1)) {
      all.add(at);
    }
    return List.copyOf(all);
  }

  /** The reading one whole step on in that direction, nearest to the true width; −1 if none. */
  private static int next(double[] gaps, Grid grid, int from, int direction) {
    int best = -1;
    for (int i = from + direction; i >= 0 && i < gaps.length; i += direction) {
      double off = Math.abs(Math.abs(gaps[i] - gaps[from]) - grid.stepMicrometres());
      if (isWhole(grid, Math.abs(gaps[i] - gaps[from]))
          && (best < 0
              || off < Math.abs(Math.abs(gaps[best] - gaps[from]) - grid.stepMicrometres()))) {
        best = i;
      }
    }
    return best;
  }
}
