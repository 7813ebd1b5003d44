package loopwright.matching;

/** Where a component stands in its life. */
public enum PartState {
  IN_STOCK("in stock"),
  FITTED("fitted"),
  QUARANTINED("quarantined"),
  SCRAPPED("scrapped");

  private final String word;

  PartState(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }
}
