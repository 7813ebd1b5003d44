package loopwright.matching;

/** What a family's driver gives out. */
public enum Output {
  VOLTAGE("V"),
  CURRENT("mA");

  private final String unit;

  Output(String unit) {
    this.unit = unit;
  }

  public String unit() {
    return unit;
  }
}
