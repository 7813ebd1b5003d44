package loopwright.uncertainty;

import loopwright.units.Unit;

/** Which of the two values of a reading an error sits in. */
public enum Quantity {
  /** Gap of a static reading, displacement of a dynamic one; µm. */
  GAP(Unit.MICROMETRE),
  /** Output; V. */
  VOLTS(Unit.VOLT);

  private final Unit unit;

  Quantity(Unit unit) {
    this.unit = unit;
  }

  public Unit unit() {
    return unit;
  }
}
