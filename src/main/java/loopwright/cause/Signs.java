package loopwright.cause;

/**
 * What measurements not yet taken would show if a variant were true.
 *
 * @param labels what the markings of the parts say
 * @param extraMetres cable more than the records say, as its capacitance shows it
 * @param extraSpread standard uncertainty of that, m
 * @param curveIsDistorted does a static curve differ from the baseline?
 * @param slopeIsShown is the sensitivity shown the true one? Not with a wrong meter.
 * @param special the one check that is made for this cause
 */
record Signs(
    Labels labels,
    double extraMetres,
    double extraSpread,
    boolean curveIsDistorted,
    boolean slopeIsShown,
    Special special) {

  /** What the markings say. */
  enum Labels {
    AS_RECORDED,
    OTHER_LENGTH,
    OTHER_DRIVER,
    OTHER_PART
  }

  /** Checks that only one cause answers to. */
  enum Special {
    NONE,
    CONNECTOR,
    SUPPLY,
    RESISTANCE,
    WIRING,
    METER,
    MONITOR,
    INSTALLATION
  }

  /** Nothing but the output is out of the way. */
  static Signs none() {
    return new Signs(Labels.AS_RECORDED, 0, 0, false, true, Special.NONE);
  }

  static Signs length(double extraMetres, double spread) {
    return new Signs(Labels.OTHER_LENGTH, extraMetres, spread, true, true, Special.NONE);
  }

  Signs marked(Labels other) {
    return new Signs(other, extraMetres, extraSpread, curveIsDistorted, slopeIsShown, special);
  }

  Signs distorted() {
    return new Signs(labels, extraMetres, extraSpread, true, slopeIsShown, special);
  }

  Signs shownWrong() {
    return new Signs(labels, extraMetres, extraSpread, curveIsDistorted, false, special);
  }

  Signs answering(Special check) {
    return new Signs(labels, extraMetres, extraSpread, curveIsDistorted, slopeIsShown, check);
  }
}
