package loopwright.curve;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Which readings of one run are judged: those inside the profile's range that stand one increment
 * apart, as many as possible. Readings between them are finer steps, and where none stands one
 * increment on, the chain takes a wider step that ISF limits don't apply to. When no three readings
 * can be chained that way, all readings in the range form the chain.
 *
 * @param gaps of the run in µm, rising
 * @param lattice of the grid they are judged on
 * @param members places of the judged readings in the run, by rising gap
 * @param beyond the same chain carried on past both ends of the range, where only drawn
 */
record Chain(double[] gaps, Lattice lattice, List<Integer> members, List<Integer> beyond) {
  private static final double WIDE_STEP_BONUS = 1e-3;
  private static final double START_OFF_GRID = 1e-5;

  /**
   * @param gaps of a run in µm, rising, at least one of them inside the grid's range
   */
  static Chain through(double[] gaps, Grid grid) {
    Lattice lattice = Lattice.of(grid);
    int[] inside = IntStream.range(0, gaps.length).filter(i -> lattice.holds(gaps[i])).toArray();
    Chain chain = new Chain(gaps, lattice, best(gaps, lattice, inside), List.of());
    if (chain.wholeSteps() == 0 || chain.members.size() < Curve.FEWEST) {
      List<Integer> all = Arrays.stream(inside).boxed().toList();
      return new Chain(gaps, lattice, all, all);
    }
    return new Chain(gaps, lattice, chain.members, chain.extended());
  }

  /** How many readings lie inside the range. */
  static int inside(double[] gaps, Grid grid) {
    return (int) Arrays.stream(gaps).filter(Lattice.of(grid)::holds).count();
  }

  /** Does a step between two readings have the profile's width, so that ISF limits apply? */
  boolean isWhole(int from, int to) {
    return lattice.isWhole(gaps[to] - gaps[from]);
  }

  int wholeSteps() {
    return (int)
        IntStream.range(1, members.size())
            .filter(i -> isWhole(members.get(i - 1), members.get(i)))
            .count();
  }

  /** Whole steps from one end of the profile's range to the other. */
  boolean isComplete() {
    return lattice.isCoveredBy(range()) && wholeSteps() == members.size() - 1;
  }

  /** The judged stretch. */
  GapRange range() {
    return new GapRange(gaps[members.get(0)], gaps[members.get(members.size() - 1)]);
  }

  /**
   * The chain of most whole steps: for each reading the best chain that ends there (longest path).
   * Among equals the steps nearest the true width win, then the longer stretch, then the start
   * nearest the grid's.
   */
  private static List<Integer> best(double[] gaps, Lattice lattice, int[] inside) {
    double[] score = new double[inside.length];
    int[] before = new int[inside.length];
    int best = 0;
    for (int to = 0; to < inside.length; to++) {
      score[to] = -START_OFF_GRID * Math.abs(gaps[inside[to]] - lattice.from()) / lattice.step();
      before[to] = -1;
      for (int from = 0; from < to; from++) {
        double candidate = score[from] + worth(lattice, gaps[inside[to]] - gaps[inside[from]]);
        if (candidate > score[to]) {
          score[to] = candidate;
          before[to] = from;
        }
      }
      best = score[to] > score[best] ? to : best;
    }
    Deque<Integer> chain = new ArrayDeque<>();
    for (int at = best; at >= 0; at = before[at]) {
      chain.addFirst(inside[at]);
    }
    return List.copyOf(chain);
  }

  private static double worth(Lattice lattice, double width) {
    if (lattice.isWhole(width)) {
      return 1 - WIDE_STEP_BONUS * Math.abs(width - lattice.step()) / lattice.tolerance();
    }
    return width > lattice.step() ? WIDE_STEP_BONUS : Double.NEGATIVE_INFINITY;
  }

  private List<Integer> extended() {
    Deque<Integer> all = new ArrayDeque<>(members);
    for (int at = next(all.getFirst(), -1); at >= 0; at = next(all.getFirst(), -1)) {
      all.addFirst(at);
    }
    for (int at = next(all.getLast(), 1); at >= 0; at = next(all.getLast(), 1)) {
      all.addLast(at);
    }
    return new ArrayList<>(all);
  }

  /** The reading one whole step on in that direction, nearest to the true width; −1 if none. */
  private int next(int from, int direction) {
    int best = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int i = from + direction; i >= 0 && i < gaps.length; i += direction) {
      double width = Math.abs(gaps[i] - gaps[from]);
      if (lattice.isWhole(width) && Math.abs(width - lattice.step()) < least) {
        best = i;
        least = Math.abs(width - lattice.step());
      }
    }
    return best;
  }
}
