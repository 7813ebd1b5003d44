package loopwright.matching;

/**
 * A kind of fact that the source of a view has a place for. Where it has none, a rule does not
 * judge; where it has one and it is empty, the rule says <em>unknown</em>.
 */
public enum Fact {
  PROBE_TIP,
  DRIVER_TIP,
  PROBE_SCALE_FACTOR,
  DRIVER_SCALE_FACTOR,
  /** In which other places a part stands. */
  PLACEMENTS,
  /** Quarantined, scrapped, promised. */
  STATE,
  /** The latest as-left calibration. */
  CALIBRATION,
  /** The classification of the area that the point is in. */
  AREA,
  /** The alloy of the shaft. */
  SHAFT_ALLOY,
  /** Temperatures at tip, route and box. */
  TEMPERATURES,
  /** Monitor channels and what they are told. */
  CHANNELS
}
