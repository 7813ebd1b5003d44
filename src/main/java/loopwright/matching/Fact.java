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
  CALIBRATION
}
