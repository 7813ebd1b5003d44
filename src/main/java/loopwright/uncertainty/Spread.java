package loopwright.uncertainty;

/** How one source of error acts on the readings of a curve. */
public enum Spread {
  /** Each reading has its own error: reading a micrometer, noise, resolution. */
  EACH_READING("each reading its own"),
  /** One error, the same in every reading: the zero of a micrometer. */
  SAME_OFFSET("the same in all readings"),
  /** One relative error, the same in every reading: the scale of a micrometer or a voltmeter. */
  SAME_SHARE("the same share of all readings");

  private final String label;

  Spread(String label) {
    this.label = label;
  }

  public String label() {
    return label;
  }
}
