package loopwright.uncertainty;

/**
 * Sensitivity of a dynamic check, mV/µm: output pk-pk over displacement pk-pk, from one reading
 * ({@link Readings} with the displacement as gap).
 */
record DynamicSensitivity() implements Measurand {

  @Override
  public String name() {
    return "dynamic sensitivity";
  }

  @Override
  public String unit() {
    return "mV/µm";
  }

  @Override
  public double value(Readings readings) {
    return 1000 * readings.volts()[0] / readings.gaps()[0];
  }

  @Override
  public Gradient gradient(Readings readings) {
    double displacement = readings.gaps()[0];
    return new Gradient(
        new double[] {-value(readings) / displacement}, new double[] {1000 / displacement});
  }
}
