package loopwright.uncertainty;

/** A result computed from readings, with its derivatives. */
interface Measurand {
  /** In words, for instance "average scale factor". */
  String name();

  /** Symbol of the result's unit. */
  String unit();

  double value(Readings readings);

  /** Sensitivity coefficients ∂result/∂reading. */
  Gradient gradient(Readings readings);

  /**
   * @param byGap result's unit per µm, one a reading
   * @param byVolts result's unit per V, one a reading
   */
  record Gradient(double[] byGap, double[] byVolts) {
    double[] by(Quantity quantity) {
      return quantity == Quantity.GAP ? byGap : byVolts;
    }
  }
}
