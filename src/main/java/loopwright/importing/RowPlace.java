package loopwright.importing;

/** Where a row stands: {@code row 7 of points.csv}. */
record RowPlace(String file, int line) {
  @Override
  public String toString() {
    return "row " + line + " of " + file;
  }
}
