package loopwright.cause;

/** What can be the matter, and how likely that is before anything was measured. */
public enum Cause {
  HEALTHY("healthy", 0.30),
  GAP_MOVED("gap moved", 0.20),
  OVER_LENGTH("over length", 0.10),
  UNDER_LENGTH("under length", 0.08),
  ODD_LENGTH("re-terminated cable of odd length", 0.015),
  OTHER_DRIVER("driver of another system length", 0.012),
  BEYOND_MODEL("length far off, beyond the model", 0.02),
  CONNECTOR("wet or dirty connector", 0.035),
  LOADING("meter or barrier loading", 0.01),
  OTHER_SCALE("other tip or scale factor", 0.01),
  OTHER_ALLOY("other target alloy", 0.015),
  SIDE_VIEW("target seen from the side", 0.01),
  CROSS_TALK("cross-talk", 0.003),
  SUPPLY_LOW("supply low", 0.02),
  OPEN_OR_SHORT("open or short", 0.01),
  OTHER_CHANNEL("landed on another channel", 0.01),
  MONITOR_SCALE("monitor set to another scale factor", 0.03),
  DRIVER_FAULT("driver fault or drift", 0.02),
  METER_ERROR("meter error", 0.04);

  private final String label;
  private final double usualPrior;

  Cause(String label, double usualPrior) {
    this.label = label;
    this.usualPrior = usualPrior;
  }

  public String label() {
    return label;
  }

  /** Is it one of the lengths sold, but not the right one? */
  public boolean isWrongLength() {
    return this == OVER_LENGTH || this == UNDER_LENGTH;
  }

  /** Relative weight before measuring; common practice, no source. */
  double usualPrior() {
    return usualPrior;
  }
}
