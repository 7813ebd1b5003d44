package loopwright.print;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Blocks of text in a row above the things they name. Each stands as near above its thing as it can
 * without touching its neighbour; where one row is too narrow they take turns in two or more.
 */
final class Labels {
  /** Least room between neighbours, in user units. */
  private static final double BETWEEN = 14;

  private final double left;
  private final double right;

  Labels(double left, double right) {
    this.left = left;
    this.right = right;
  }

  /**
   * One block of text.
   *
   * @param over middle of the thing that it names
   */
  record Block(double over, double width) {}

  /**
   * Where a block stands.
   *
   * @param middle its middle
   * @param row counted from the things upwards, from 0
   */
  record Place(double middle, int row) {}

  /** The fewest rows in which blocks that take turns all have room. */
  int rows(List<Block> blocks) {
    int rows = 1;
    while (rows < blocks.size() && !fit(blocks, rows)) {
      rows++;
    }
    return rows;
  }

  private boolean fit(List<Block> blocks, int rows) {
    double[] taken = new double[rows];
    for (int i = 0; i < blocks.size(); i++) {
      taken[i % rows] += blocks.get(i).width + BETWEEN;
    }
    return Arrays.stream(taken).allMatch(width -> width - BETWEEN <= right - left);
  }

  /** A place for each block; blocks are in the order of what they name. */
  List<Place> places(List<Block> blocks) {
    int rows = rows(blocks);
    List<Place> places = new ArrayList<>();
    blocks.forEach(block -> places.add(new Place(block.over, places.size() % rows)));
    for (int row = 0; row < rows; row++) {
      spread(blocks, places, row);
    }
    return places;
  }

  /** Pushes the blocks of a row to the right until none touch, then back from the right edge. */
  private void spread(List<Block> blocks, List<Place> places, int row) {
    double free = left;
    for (int i = row; i < blocks.size(); i += step(places)) {
      double half = blocks.get(i).width / 2;
      double middle = Math.max(free + half, places.get(i).middle);
      places.set(i, new Place(middle, row));
      free = middle + half + BETWEEN;
    }
    double limit = right;
    for (int i = last(blocks.size(), row, step(places)); i >= 0; i -= step(places)) {
      double half = blocks.get(i).width / 2;
      double middle = Math.min(limit - half, places.get(i).middle);
      places.set(i, new Place(middle, row));
      limit = middle - half - BETWEEN;
    }
  }

  private static int step(List<Place> places) {
    return 1 + places.stream().mapToInt(Place::row).max().orElse(0);
  }

  private static int last(int size, int row, int step) {
    return size <= row ? -1 : row + (size - 1 - row) / step * step;
  }
}
