package loopwright.matching;

/** Whether a family's systems have an extension cable. */
public enum CableUse {
  /** Every system of the family has one. */
  ALWAYS,
  /** Probe leads reach the driver; a cable would be one too many. */
  NEVER,
  /** Depends on the lead, or is not known: the length balance decides. */
  BY_LENGTH
}
