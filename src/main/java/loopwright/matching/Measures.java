package loopwright.matching;

/** What is measured at a point, as far as the rules tell them apart. */
public enum Measures {
  RADIAL_VIBRATION,
  AXIAL_POSITION,
  /** A phase reference or a speed: one mark a turn, no level. */
  MARK,
  EXPANSION,
  NOT_SAID
}
