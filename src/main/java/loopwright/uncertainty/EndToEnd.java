package loopwright.uncertainty;

/**
 * Scale factor from the first reading to the last, 1000 (V₁ − Vₙ)/(gₙ − g₁) in mV/µm: the ISF of
 * two neighbours, the ASF of a whole range. Readings between don't enter, so more of them don't
 * make it surer.
 */
record EndToEnd(String name) implements Measurand {

  @Override
  public String unit() {
    return "mV/µm";
  }

  @Override
  public double value(Readings readings) {
    double[] volts = readings.volts();
    return 1000 * (volts[0] - volts[readings.last()]) / width(readings);
  }

  @Override
  public Gradient gradient(Readings readings) {
    int last = readings.last();
    double width = width(readings);
    double value = value(readings);
    double[] byGap = new double[last + 1];
    double[] byVolts = new double[last + 1];
    byGap[0] = value / width;
    byGap[last] = -value / width;
    byVolts[0] = 1000 / width;
    byVolts[last] = -1000 / width;
    return new Gradient(byGap, byVolts);
  }

  private static double width(Readings readings) {
    return readings.gaps()[readings.last()] - readings.gaps()[0];
  }
}
