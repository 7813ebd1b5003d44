package loopwright.curve;

import java.util.OptionalDouble;

/**
 * One reading with what was made of it.
 *
 * @param reading as given
 * @param isf incremental scale factor from the reading before it (the next smaller gap), mV/µm,
 *     positive when the output gets more negative; empty at a run's first point
 * @param deviationMicrometres from the placed line; positive: less negative than the line, reads
 *     closer
 * @param judged false when it is only drawn: outside the range, or a finer step
 */
public record CurvePoint(
    CurveReading reading, OptionalDouble isf, double deviationMicrometres, boolean judged) {

  public double gapMicrometres() {
    return reading.gapMicrometres();
  }

  public double volts() {
    return reading.volts();
  }

  public Run run() {
    return reading.run();
  }
}
