package loopwright.matching;

/**
 * Another place in which the same component stands at the same time.
 *
 * @param tag of the point
 * @param where in the source, for instance a file and row; empty when there is nothing to add
 */
public record Elsewhere(String tag, String where) {

  @Override
  public String toString() {
    return where.isEmpty() ? tag : tag + " (" + where + ")";
  }
}
